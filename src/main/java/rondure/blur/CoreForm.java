package rondure.blur;

import java.util.List;
import java.util.Optional;
import rondure.base.Moments;

/**
 * What the form of a scene's sharpest average stars says of its core and of a defocus that all
 * frames share.
 */
final class CoreForm {
  private static final double EQUALLY_SHARP = 0.06;
  private static final int MOST_FRAMES = 8;

  /** Discs that a lens adds at the corners; D²/16 is 0.25 px² at most. */
  private static final double EVEN_PX = 2;

  /** With a core of this share of the second moment stars are a quarter too wide, 1/1.25². */
  private static final double SURELY_NARROWER = 0.64;

  private static final double LEAST_SHARE = 0.05;
  private static final int STEPS = 60;

  /** Half-maximum widths of usual cores differ by so much. */
  private static final double USUAL_SPREAD_PX = 0.6;

  private static final double LEAST_ERROR_PX2 = 0.05;
  private static final double MOST_ERROR_PX2 = 0.3;

  private static final double MOST_ODDS = 6;

  /** Second moment of a pixel's box, 1/12 px². */
  private static final double PIXEL_PX2 = 1 / 12.0;

  private final DiscInProfile profile;
  private final List<Integer> frames;

  private CoreForm(DiscInProfile profile, List<Integer> frames) {
    this.profile = profile;
    this.frames = List.copyOf(frames);
  }

  /**
   * Of a solved scene: empty where every frame is shaken or too few stars are averaged.
   *
   * @param evidence of the solved frames
   */
  static Optional<CoreForm> of(SceneSolution found, List<FrameEvidence> evidence) {
    List<Integer> sharp = found.equallySharp(EQUALLY_SHARP, MOST_FRAMES);
    return sharp.isEmpty()
        ? Optional.empty()
        : DiscInProfile.of(sharp.stream().map(evidence::get).toList(), isEven(found.lens()))
            .map(profile -> new CoreForm(profile, sharp));
  }

  private static boolean isEven(LensSurface lens) {
    double slope = Math.hypot(lens.tiltRightPx(), lens.tiltDownPx());
    double bend = Math.max(Math.abs(lens.curvaturePx()), Math.abs(lens.astigmatismPx()));
    return Math.max(slope, bend) < EVEN_PX;
  }

  /** The likeliest core narrow enough that all frames are out of focus. */
  Optional<CoreAssumption> ifDefocused(SceneSolution found, double usualFwhmPx, double leastPx2) {
    double whole = found.corePx2() + profile.predictedPx2(found, frames);
    double widest = Math.min(SURELY_NARROWER * whole, found.corePx2());
    double narrowest = Math.max(leastPx2, LEAST_SHARE * whole);
    if (widest <= narrowest) {
      return Optional.empty();
    }
    double[] loss = new double[STEPS + 1];
    int best = 0;
    for (int i = 0; i <= STEPS; i++) {
      double core = narrowest + (widest - narrowest) * i / STEPS;
      double off = (profile.coreFwhmPx(whole - core) - usualFwhmPx) / USUAL_SPREAD_PX;
      loss[i] = profile.loss(whole - core) + off * off / 2;
      best = loss[i] < loss[best] ? i : best;
    }
    double step = (widest - narrowest) / STEPS;
    int near = 0;
    for (double one : loss) {
      near += one < loss[best] + 0.5 ? 1 : 0;
    }
    double error = Math.max(LEAST_ERROR_PX2, Math.min(MOST_ERROR_PX2, near * step / 2));
    return Optional.of(CoreAssumption.usual(leastPx2, narrowest + step * best, error));
  }

  /** Half-maximum width of the core behind the discs of a solution, the pixel included. */
  double coreFwhmPx(SceneSolution found) {
    double bare = profile.coreFwhmPx(profile.predictedPx2(found, frames));
    return Math.hypot(bare, Moments.FWHM_PER_SIGMA * Math.sqrt(PIXEL_PX2));
  }

  /** Logarithm of the odds that the core found is right and not that of the other solution. */
  double odds(SceneSolution found, SceneSolution defocused) {
    double gain =
        profile.loss(profile.predictedPx2(defocused, frames))
            - profile.loss(profile.predictedPx2(found, frames));
    return Math.max(-MOST_ODDS, Math.min(MOST_ODDS, gain));
  }
}
