package rondure.blur;

import java.util.Optional;
import rondure.stars.StarField;

/**
 * What the directions of a frame's stars say: a smear common to all, and whose it is.
 *
 * @param smearPx2 mean second moment per axis that the common smear adds (its spin-2 length),
 *     median over the stars; 0 when it is not significant
 * @param gain how much the smear improves the fit over a lens alone, chi²
 * @param trailCentrePx longest trail the exposure can give in the centre, when it can be predicted
 * @param smearRatio measured length over the longest trail possible, when that is known
 * @param skyMostPx2 smear of the longest trail possible, median over the stars, and where none is
 *     seen no more than could hide; 0 when unknown
 * @param skyLogOdds for the sky against a turn of the camera, from the pattern over the field
 * @param poles size and pattern together beside every aim, when exposure and focal length are known
 * @param radialPx2 stretch away from the centre at the corner, px²
 * @param lensPx2 median over the stars of that stretch, unsigned
 * @param at the smear at any pixel
 */
record DirectionReading(
    double smearPx2,
    double gain,
    Optional<Double> trailCentrePx,
    Optional<Double> smearRatio,
    double skyMostPx2,
    double skyLogOdds,
    Optional<PoleOdds> poles,
    double radialPx2,
    double lensPx2,
    SmearModel.SmearAt at) {

  /** Shorter trails than this, where they are longest, show no pattern. */
  private static final double LEAST_TRAIL_FOR_PATTERN_PX = 1;

  private static final double LONGEST = 0.9;

  private static final double MIDDLE = 0.5;
  private static final int LEAST_STARS_FOR_PATTERN = 15;

  /** 4.5 σ. */
  private static final double SIGNIFICANT_GAIN = 20;

  private static final double LEAST_SMEAR_PX2 = 0.05;

  /**
   * @param oval true when the stars are clearly oval: only then is the lens axis searched
   */
  static DirectionReading of(FrameEvidence evidence, boolean oval) {
    StarField field = evidence.field();
    SmearField centred =
        SmearField.of(field, evidence.focalLengthPx().orElse(SmearField.NARROW_FOCAL_PX));
    SmearField smears = oval ? LensAxis.settle(centred) : centred;
    SmearModel lens = SmearFits.lensOnly(smears);
    SmearModel shake = SmearFits.shake(smears);
    Optional<Double> centre = LongestTrail.centrePx(evidence);
    Optional<SmearModel> trail =
        field.stars().size() < LEAST_STARS_FOR_PATTERN
            ? Optional.empty()
            : trail(evidence, smears, centre, lens.loss() - shake.loss());
    SmearModel best = trail.filter(t -> t.loss() < shake.loss()).orElse(shake);
    double gain = lens.loss() - best.loss();
    boolean real = gain >= SIGNIFICANT_GAIN && best.smearPx2() >= LEAST_SMEAR_PX2;
    Optional<Double> most = LongestTrail.smearPx2(evidence, MIDDLE);
    if (!real) {
      return new DirectionReading(
          0,
          gain,
          centre,
          Optional.empty(),
          Math.min(LEAST_SMEAR_PX2, most.orElse(0.0)),
          0,
          Optional.empty(),
          lens.radialPx2(),
          lens.lensPx2(),
          (x, y) -> new double[2]);
    }
    return new DirectionReading(
        best.smearPx2(),
        gain,
        centre,
        most.map(px2 -> Math.sqrt(best.smearPx2() / px2)),
        most.orElse(0.0),
        trail.map(t -> PatternOdds.of(shake, t, smears, centre.isPresent())).orElse(0.0),
        centre.map(known -> PoleOdds.of(smears, evidence.exposureSeconds().orElseThrow())),
        best.radialPx2(),
        best.lensPx2(),
        best.at());
  }

  /** The sky's pattern: of known length where the facts tell, else only when there is a smear. */
  private static Optional<SmearModel> trail(
      FrameEvidence evidence, SmearField smears, Optional<Double> centrePx, double shakeGain) {
    if (centrePx.isPresent()) {
      return LongestTrail.smearPx2(evidence, LONGEST)
          .filter(px2 -> Math.sqrt(24 * px2) >= LEAST_TRAIL_FOR_PATTERN_PX)
          .map(px2 -> TrailFit.best(smears, evidence.exposureSeconds().orElseThrow()));
    }
    if (shakeGain < SIGNIFICANT_GAIN) {
      return Optional.empty();
    }
    return Optional.of(
        evidence.focalLengthPx().isPresent()
            ? TrailFit.ofAnyLength(smears)
            : TrailFit.ofAnyLensAndLength(smears));
  }

  boolean isSmeared() {
    return smearPx2 > 0;
  }

  /** Length of a line that adds this smear: L²/24 per axis. */
  double smearLengthPx() {
    return Math.sqrt(24 * smearPx2);
  }
}
