package rondure.blur;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rondure.sky.Camera;
import rondure.sky.FrameSky;
import rondure.sky.Rotation;
import rondure.sky.SceneSky;
import rondure.sky.Spin;
import rondure.sky.StarTracks;

/**
 * Odds of the causes from one frame whose sky is not known: the same fit of disc, lens and common
 * smear as for scenes, with no trail predicted; the smear is then the sky's or the tripod's by what
 * the exposure allows and how it turns over the field. Mixed with the one-frame judge, which sees
 * what the fit does not (double images, oval stars), and never as sure as either says.
 */
final class LoneOdds {
  private static final double FIT_SHARE = 0.75;

  /** Power to which probabilities are taken: fitted on calibration nights (docs/accuracy.md). */
  private static final double HUMILITY = 0.7;

  private static final double MOST_WITHOUT_EXPOSURE = 0.65;

  private final OneFrameAttribution oneFrame;
  private final BudgetOdds odds;
  private final AttributionSettings settings;

  LoneOdds(OneFrameAttribution oneFrame, BudgetOdds odds, AttributionSettings settings) {
    this.settings = settings;
    this.oneFrame = oneFrame;
    this.odds = odds;
  }

  /**
   * @param shown what the one-frame judge says
   * @param path the camera's during the frame
   * @param halo what stands about its stars
   */
  Map<Cause, Double> of(FrameEvidence frame, Verdict shown, CameraPath path, Optional<Halo> halo) {
    LightMissing missing = LightMissing.ofHalo(halo);
    // Two images prove a knock, flat tops a disc: the fit sees neither and would call both a smear.
    if (shown.saw(Evidence.Kind.DOUBLE_IMAGE) || shown.saw(Evidence.Kind.FLAT_TOPPED)) {
      return shown.probabilities();
    }
    Map<Cause, Double> humble =
        Haze.given(humble(shown.probabilities()), missing.hazeProbability());
    return fitted(frame, path, missing)
        .map(fit -> Mixing.mix(fit, FIT_SHARE, humble))
        .orElse(humble);
  }

  private Optional<Map<Cause, Double>> fitted(
      FrameEvidence frame, CameraPath path, LightMissing missing) {
    OneFrameAttribution.Owner owner = oneFrame.owner(frame);
    FrameEvidence alike = frame.with(Strays.without(frame));
    Optional<Map<Cause, Double>> shaken = booked(alike, Spin.NONE, path, missing);
    if (shaken.isEmpty()) {
      return Optional.empty();
    }
    // Of a sky whose pole is told the trail is predicted, else the common smear is its own.
    Map<Cause, Double> trailed =
        owner
            .pole()
            .flatMap(pole -> booked(alike, Spin.ofSky(pole), path, missing))
            .orElseGet(() -> turnedRound(shaken.get()));
    return Optional.of(Mixing.mix(trailed, trailing(frame, owner), shaken.get()));
  }

  private Optional<Map<Cause, Double>> booked(
      FrameEvidence frame, Spin sky, CameraPath path, LightMissing missing) {
    SceneBudget budget = SceneBudget.of(under(frame, sky), settings, List.of(path));
    return budget
        .frames()
        .get(0)
        .map(own -> odds.of(own, budget.shared().orElseThrow().core(), missing));
  }

  private static Map<Cause, Double> turnedRound(Map<Cause, Double> shaken) {
    Map<Cause, Double> trailed = new EnumMap<>(shaken);
    trailed.put(Cause.TRAILING, shaken.get(Cause.TRIPOD));
    trailed.put(Cause.TRIPOD, shaken.get(Cause.TRAILING));
    return trailed;
  }

  /** Any length fits an exposure that is not known: then the pattern alone is no proof. */
  private static double trailing(FrameEvidence frame, OneFrameAttribution.Owner owner) {
    return frame.exposureSeconds().isPresent()
        ? owner.trailing()
        : Math.max(1 - MOST_WITHOUT_EXPOSURE, Math.min(MOST_WITHOUT_EXPOSURE, owner.trailing()));
  }

  /** The frame under a sky that turns so; where it stands still all smear is the camera's. */
  private static SceneEvidence under(FrameEvidence frame, Spin turning) {
    FrameEvidence timed =
        new FrameEvidence(
            frame.field(),
            Optional.of(frame.exposureSeconds().orElse(1.0)),
            frame.focalLengthPx(),
            frame.diffractionFwhmPx(),
            frame.gain(),
            frame.developed(),
            frame.scene());
    Camera camera =
        Camera.rectilinear(
            frame.focalLengthPx().orElse(SmearField.NARROW_FOCAL_PX),
            frame.field().widthPx(),
            frame.field().heightPx());
    FrameSky one = new FrameSky(Optional.of(Rotation.NONE), Optional.of(turning), Spin.NONE, 0, 0);
    boolean turns = turning.rateRadPerS() > 0;
    SceneSky sky =
        new SceneSky(
            turns ? SceneSky.Finding.SKY_TURNS : SceneSky.Finding.TRACKING,
            Optional.of(camera),
            false,
            Optional.empty(),
            180,
            List.of(one),
            StarTracks.NONE);
    return new SceneEvidence(List.of(timed), List.of(0), sky);
  }

  static Map<Cause, Double> humble(Map<Cause, Double> sure) {
    double sum = sure.values().stream().mapToDouble(p -> Math.pow(p, HUMILITY)).sum();
    Map<Cause, Double> humble = new EnumMap<>(Cause.class);
    sure.forEach((cause, p) -> humble.put(cause, Math.pow(p, HUMILITY) / sum));
    return humble;
  }
}
