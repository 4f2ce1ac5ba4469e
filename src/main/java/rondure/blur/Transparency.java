package rondure.blur;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rondure.sky.StarTracks;
import rondure.stars.Star;
import rondure.stars.StarField;

/**
 * How much of the stars' light each frame of a scene lost: Δm = -2.5 log10 of the flux ratios of
 * the same stars, scaled by exposure, ISO and f-number, over all frames at once.
 *
 * <p>The reference is the 25th percentile of the losses, for a lucky few would make all others
 * hazy, except where light changes steadily. Haze that lasts all night is not seen in this way.
 * Stars at the same place in the frame compare best; what changes with the place is solved for
 * ({@link LossFit}).
 */
public final class Transparency {
  /** Fewest shared stars that tell a frame's loss. */
  static final int LEAST_STARS = 6;

  /** Brightest shared stars that are used of each frame. */
  private static final int MOST_STARS = 100;

  /** Stars differ from frame to frame by more than their noise: sampling, flat field, profile. */
  private static final double LEAST_ERROR_MAG = 0.03;

  private static final double MAG_PER_LN = 2.5 / Math.log(10);

  private final SceneEvidence scene;
  private final List<Double> gains;
  private final List<Optional<FrameLight.Silence>> silences = new ArrayList<>();

  /**
   * What the air may take over a degree of altitude: 0.25 mag per airmass, and an airmass that
   * falls by 0.9 from 20° to 30°, half of that in the middle of the sky.
   */
  private static final double SLOPE_MAG_PER_DEG = 0.012;

  private static final double SLOPE_MAG_WITHOUT_FOCAL_LENGTH = 0.25;

  private final List<CameraPath> paths;

  private Transparency(SceneEvidence scene, List<CameraPath> paths) {
    this.scene = scene;
    this.paths = paths;
    this.gains = Gains.of(scene.frames());
    for (int i = 0; i < scene.frames().size(); i++) {
      silences.add(silence(i));
    }
  }

  /** One answer for each of the scene's measured frames, in their order. */
  public static List<FrameLight> of(SceneEvidence scene) {
    return of(scene, CameraPath.of(scene));
  }

  /**
   * The same where the camera's paths were read already.
   *
   * @param paths one for each frame
   */
  static List<FrameLight> of(SceneEvidence scene, List<CameraPath> paths) {
    return new Transparency(scene, paths).lights();
  }

  private List<FrameLight> lights() {
    StarLight light = collect();
    LinkedFrames links = LinkedFrames.of(light, LEAST_STARS);
    LossFit.Solved solved = LossFit.of(light, links, slopePriorMag());
    int[][] byFrame = light.byFrame();
    Map<Integer, Double> clear = new HashMap<>();
    List<FrameLight> answers = new ArrayList<>();
    for (int i = 0; i < light.frames; i++) {
      Optional<FrameLight.Silence> why = silences.get(i);
      if (why.isEmpty() && links.size(i) < 2) {
        why = Optional.of(FrameLight.Silence.FEW_STARS);
      }
      if (why.isPresent()) {
        answers.add(FrameLight.silent(byFrame[i].length, why.get()));
      } else {
        int group = links.groupOf(i);
        double zero =
            clear.computeIfAbsent(
                group,
                g ->
                    ClearFrames.lossMag(
                        links.in(g, solved.lossMag()), links.in(g, solved.errorMag())));
        double loss = solved.lossMag()[i] - zero;
        StarField seen = scene.frames().get(i).field();
        FieldLoss field = FieldLoss.of(light, byFrame[i], solved.residualMag());
        double fall =
            ClearFrames.fallMag(
                links.in(group, solved.lossMag()), links.in(group, solved.errorMag()));
        FrameLight.Loss whole = field.loss(loss, solved.errorMag()[i], links.size(i)).of(fall);
        answers.add(FrameLight.lost(byFrame[i].length, LightInPath.doubted(whole, seen)));
      }
    }
    return WingExcess.added(answers, scene.frames());
  }

  /** Over half the frame's diagonal. */
  private double slopePriorMag() {
    return scene.frames().stream()
        .flatMap(
            frame ->
                frame.focalLengthPx().stream()
                    .map(f -> Math.atan(halfDiagonal(frame.field()) / f))
                    .map(Math::toDegrees))
        .findFirst()
        .map(degrees -> SLOPE_MAG_PER_DEG * degrees)
        .orElse(SLOPE_MAG_WITHOUT_FOCAL_LENGTH);
  }

  private static double halfDiagonal(StarField field) {
    return Math.hypot(field.widthPx(), field.heightPx()) / 2;
  }

  private Optional<FrameLight.Silence> silence(int frame) {
    if (trackedStars(frame).isEmpty()) {
      return Optional.of(FrameLight.Silence.NOT_MATCHED);
    }
    if (BlackSky.is(scene.frames().get(frame))) {
      return Optional.of(FrameLight.Silence.BLACK_SKY);
    }
    if (paths.get(frame).twice().isPresent()) {
      return Optional.of(FrameLight.Silence.DOUBLE_IMAGE);
    }
    return gains.get(frame) > 0
        ? Optional.empty()
        : Optional.of(FrameLight.Silence.EXPOSURE_UNKNOWN);
  }

  private StarLight collect() {
    StarTracks tracks = scene.sky().tracks();
    StarLight light = new StarLight(scene.frames().size(), tracks.count());
    for (int i = 0; i < scene.frames().size(); i++) {
      if (silences.get(i).isEmpty()) {
        StarField field = scene.frames().get(i).field();
        for (int j : trackedStars(i)) {
          int track = tracks.trackOf(scene.places().get(i), j);
          light.add(i, track, seen(field, field.stars().get(j), gains.get(i)));
        }
      }
    }
    return light;
  }

  /** The brightest stars that have a track. */
  private List<Integer> trackedStars(int frame) {
    List<Star> stars = scene.frames().get(frame).field().stars();
    List<Integer> tracked = new ArrayList<>();
    for (int j = 0; j < stars.size(); j++) {
      if (scene.sky().tracks().trackOf(scene.places().get(frame), j) >= 0
          && stars.get(j).fluxCounts() > 0) {
        tracked.add(j);
      }
    }
    tracked.sort(Comparator.comparingDouble(j -> -stars.get(j).fluxCounts()));
    return tracked.subList(0, Math.min(MOST_STARS, tracked.size()));
  }

  private static StarLight.Seen seen(StarField field, Star star, double gain) {
    double half = halfDiagonal(field);
    return new StarLight.Seen(
        (star.xPx() - (field.widthPx() - 1) / 2.0) / half,
        (star.yPx() - (field.heightPx() - 1) / 2.0) / half,
        magnitude(star.fluxCounts(), gain),
        Math.hypot(LEAST_ERROR_MAG, MAG_PER_LN / star.snr()));
  }

  /** -2.5 log10 of the light per gain. */
  static double magnitude(double fluxCounts, double gain) {
    return -2.5 * Math.log10(fluxCounts / gain);
  }
}
