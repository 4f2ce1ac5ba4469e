package rondure.report;

import java.util.Optional;
import rondure.intake.ShotFacts;
import rondure.sky.ExposureRules;

/** What the rules of thumb say of a scene, seconds; empty where the files tell too little. */
final class TrailRules {
  private static final double FULL_FRAME_MM = 36;

  private TrailRules() {}

  /** The 500 rule. */
  static Optional<Double> constantSeconds(SceneFigures figures) {
    double focalPx = figures.focalLengthPx().orElseThrow();
    return figures
        .longSidePx()
        .map(side -> FULL_FRAME_MM * focalPx / side)
        .map(f35 -> ExposureRules.constantRuleSeconds(ExposureRules.CUSTOMARY_K, f35));
  }

  /** The full NPF rule for round stars on the equator. */
  static Optional<Double> npfSeconds(SceneFigures figures) {
    Optional<Double> fNumber = figures.usual(ShotFacts::fNumber);
    Optional<Double> pitch = figures.usual(ShotFacts::pixelPitchMicrons);
    Optional<Double> focal = figures.usual(ShotFacts::focalLengthMm);
    return fNumber.isPresent() && pitch.isPresent() && focal.isPresent()
        ? Optional.of(ExposureRules.npfSeconds(1, fNumber.get(), pitch.get(), focal.get(), 0))
        : Optional.empty();
  }
}
