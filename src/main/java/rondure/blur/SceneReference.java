package rondure.blur;

import java.util.List;
import java.util.Optional;
import rondure.base.RobustStats;

/**
 * What the measured frames of a scene have in common.
 *
 * @param frames measured frames
 * @param sharpestFwhmPx 10th percentile of their widths
 * @param coreFwhmPx 10th percentile of their widths across any smear
 * @param corePx2 10th percentile of their second moments across any smear
 * @param smear how much they are stretched one way, when there are at least 5 comparable frames
 */
public record SceneReference(
    int frames,
    double sharpestFwhmPx,
    double coreFwhmPx,
    double corePx2,
    Optional<CommonSmear> smear) {

  private static final double SHARPEST = 0.1;
  private static final int LEAST_FRAMES_FOR_SMEAR = 5;

  public SceneReference {
    if (frames < 1) {
      throw new IllegalArgumentException("frames must be >= 1, was " + frames);
    }
    if (!(sharpestFwhmPx > 0 && coreFwhmPx > 0 && corePx2 > 0)) {
      throw new IllegalArgumentException(
          "widths must be > 0, were " + sharpestFwhmPx + ", " + coreFwhmPx + ", " + corePx2);
    }
  }

  /**
   * The one-way stretch that the frames of a scene share. The sky stretches every frame alike, by
   * the square of the exposure; shake differs from frame to frame.
   *
   * @param frames frames compared
   * @param perSquareSecondPx2 25th percentile of the stretch (spin-2 length) over exposure squared;
   *     over 1 s² where no exposure is known
   * @param steadyShare share of the frames within 30 % of the median
   * @param exposuresKnown whether these frames tell their exposure; those that do not are left out
   *     where others do
   */
  public record CommonSmear(
      int frames, double perSquareSecondPx2, double steadyShare, boolean exposuresKnown) {}

  /** One measured frame. */
  public record Member(FieldShape shape, Optional<Double> exposureSeconds) {}

  /** The reference of a scene with at least one measured frame. */
  public static SceneReference of(List<Member> members) {
    double[] widths = members.stream().mapToDouble(m -> m.shape().fwhmPx()).toArray();
    double[] across = members.stream().mapToDouble(m -> m.shape().minorFwhmPx()).toArray();
    double[] moments = members.stream().mapToDouble(m -> m.shape().minorPx2()).toArray();
    return new SceneReference(
        members.size(),
        RobustStats.percentile(SHARPEST, widths),
        RobustStats.percentile(SHARPEST, across),
        RobustStats.percentile(SHARPEST, moments),
        smear(members));
  }

  private static Optional<CommonSmear> smear(List<Member> members) {
    List<Member> known = members.stream().filter(m -> m.exposureSeconds().isPresent()).toList();
    List<Member> compared = known.isEmpty() ? members : known;
    if (compared.size() < LEAST_FRAMES_FOR_SMEAR) {
      return Optional.empty();
    }
    double[] smears =
        compared.stream()
            .mapToDouble(m -> m.shape().moments().spin2Px2() / square(m.exposureSeconds()))
            .toArray();
    double median = RobustStats.median(smears);
    int steady = 0;
    for (double smear : smears) {
      steady += Math.abs(smear - median) <= 0.3 * median ? 1 : 0;
    }
    double usual = RobustStats.percentile(0.25, smears);
    double steadyShare = steady / (double) smears.length;
    return Optional.of(new CommonSmear(smears.length, usual, steadyShare, !known.isEmpty()));
  }

  /** The exposure squared, 1 s² when it is not known. */
  static double square(Optional<Double> exposureSeconds) {
    double seconds = exposureSeconds.orElse(1.0);
    return seconds * seconds;
  }
}
