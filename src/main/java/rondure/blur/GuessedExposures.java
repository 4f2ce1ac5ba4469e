package rondure.blur;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import rondure.base.RobustStats;
import rondure.sky.Camera;
import rondure.sky.FrameSky;
import rondure.sky.ImageVelocity;
import rondure.sky.Spin;
import rondure.stars.Star;

/**
 * Exposure times that no file tells, from the stars: they are stretched along the way they move
 * from frame to frame, by T²/12 v vᵀ. One exposure serves the whole scene, where frames gather more
 * or less light it goes with that; a frame that is stretched more than most was shaken.
 *
 * <p>Only what exposure times v is measured so; where the scale of the field is not known, the
 * exposure is in units of that.
 */
final class GuessedExposures {
  private static final int LEAST_STARS = 5;
  private static final double UNSHAKEN = 0.25;

  /** Light that changes less than this is the sky's or the air's doing. */
  private static final double SAME_LIGHT = 1.3;

  /** Shorter than the time between two frames: the shutter must close. */
  private static final double LONGEST_SHARE = 0.98;

  private static final double SHORTEST_SECONDS = 1e-3;

  private final SceneEvidence scene;
  private final Camera camera;

  private GuessedExposures(SceneEvidence scene, Camera camera) {
    this.scene = scene;
    this.camera = camera;
  }

  /** The scene with exposure times for all frames whose sky is known. */
  static SceneEvidence filled(SceneEvidence scene) {
    boolean told = scene.frames().stream().anyMatch(f -> f.exposureSeconds().isPresent());
    if (told || scene.sky().camera().isEmpty()) {
      return scene;
    }
    return new GuessedExposures(scene, scene.sky().camera().get()).fill();
  }

  private SceneEvidence fill() {
    double[] light = RelativeLight.of(scene);
    List<Double> squares = new ArrayList<>();
    for (int i = 0; i < scene.frames().size(); i++) {
      OptionalDouble square = squareSeconds(i);
      if (square.isPresent()) {
        squares.add(square.getAsDouble() / (longer(light[i]) * longer(light[i])));
      }
    }
    if (squares.isEmpty()) {
      return scene;
    }
    double[] values = squares.stream().mapToDouble(s -> s).toArray();
    double usual = Math.sqrt(Math.max(0, RobustStats.percentile(UNSHAKEN, values)));
    List<FrameEvidence> frames = new ArrayList<>();
    for (int i = 0; i < scene.frames().size(); i++) {
      double seconds = Math.min(longer(light[i]) * usual, LONGEST_SHARE * pause(i));
      frames.add(with(scene.frames().get(i), Math.max(SHORTEST_SECONDS, seconds)));
    }
    return new SceneEvidence(frames, scene.places(), scene.sky(), scene.hotPixels());
  }

  private static double longer(double light) {
    return light < SAME_LIGHT && light > 1 / SAME_LIGHT ? 1 : light;
  }

  private FrameSky sky(int index) {
    return scene.sky().frames().get(scene.places().get(index));
  }

  /** Seconds from a frame to its neighbours, by how far the sky turned; infinite if unknown. */
  private double pause(int index) {
    return Math.min(pause(index - 1, index), pause(index, index + 1));
  }

  private double pause(int before, int after) {
    if (before < 0 || after >= scene.frames().size()) {
      return Double.POSITIVE_INFINITY;
    }
    Optional<Spin> spin = sky(after).starSpin();
    if (spin.isEmpty() || sky(before).attitude().isEmpty() || sky(after).attitude().isEmpty()) {
      return Double.POSITIVE_INFINITY;
    }
    double turned =
        sky(before).attitude().get().inverse().then(sky(after).attitude().get()).angleRad();
    return turned / Math.max(1e-12, spin.get().rateRadPerS());
  }

  /** Stretch along the motion over that of one second's trail: T². */
  private OptionalDouble squareSeconds(int index) {
    Optional<Spin> spin = sky(index).starSpin();
    List<Star> stars = scene.frames().get(index).field().stars();
    if (spin.isEmpty() || stars.size() < LEAST_STARS) {
      return OptionalDouble.empty();
    }
    double[] ratios = stars.stream().mapToDouble(star -> ratio(star, spin.get())).toArray();
    return OptionalDouble.of(RobustStats.median(ratios));
  }

  private double ratio(Star star, Spin spin) {
    ImageVelocity v = camera.flow(spin, star.xPx(), star.yPx());
    double plus = (v.xPxPerS() * v.xPxPerS() - v.yPxPerS() * v.yPxPerS()) / 24;
    double cross = v.xPxPerS() * v.yPxPerS() / 12;
    double length2 = Math.max(1e-18, plus * plus + cross * cross);
    double seenPlus = (star.moments().xxPx2() - star.moments().yyPx2()) / 2;
    return (seenPlus * plus + star.moments().xyPx2() * cross) / length2;
  }

  private static FrameEvidence with(FrameEvidence frame, double seconds) {
    return new FrameEvidence(
        frame.field(),
        Optional.of(seconds),
        frame.focalLengthPx(),
        frame.diffractionFwhmPx(),
        frame.gain(),
        frame.developed(),
        frame.scene());
  }
}
