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

  private static final int STEPS = 100;

  /** Half-maximum widths of usual cores differ by so much. */
  private static final double USUAL_SPREAD_PX = 0.6;

  private static final double LEAST_ERROR_PX2 = 0.05;
  private static final double MOST_ERROR_PX2 = 0.3;

  private static final double MOST_ODDS = 6;

  /** Lenses and filters leave no narrower core, the pixel not included (common practice). */
  private static final double NARROWEST_PX = 1.3;

  private static final double NARROWEST_SPREAD_PX = 0.1;

  /** The finest second moments of real cameras, 0.2 px² with the pixel, as a half-maximum width. */
  private static final double FINEST_PX = 0.8;

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

  /**
   * The likeliest core narrow enough that all frames are out of focus: of the second moments as
   * measured, the share that the form gives it.
   */
  Optional<CoreAssumption> ifDefocused(SceneSolution found, double usualFwhmPx, double leastPx2) {
    double whole = found.corePx2() + profile.predictedPx2(found, frames);
    double widest = Math.min(SURELY_NARROWER * whole, found.corePx2());
    double largest = profile.discPx2(DiscInProfile.SHARES - 1);
    double least = Double.POSITIVE_INFINITY;
    double[] cores = new double[STEPS];
    double[] loss = new double[STEPS];
    for (int i = 0; i < STEPS; i++) {
      double disc = largest * (i + 0.5) / STEPS;
      cores[i] = whole * profile.coreShare(disc);
      double off = (profile.coreFwhmPx(disc) - usualFwhmPx) / USUAL_SPREAD_PX;
      loss[i] = profile.loss(disc) + off * off / 2;
      boolean narrow = cores[i] <= widest && cores[i] > leastPx2;
      loss[i] = narrow ? loss[i] : Double.POSITIVE_INFINITY;
      least = Math.min(least, loss[i]);
    }
    return least == Double.POSITIVE_INFINITY
        ? Optional.empty()
        : Optional.of(assumption(cores, loss, least, leastPx2));
  }

  /** The likeliest, and half the span of those nearly as likely. */
  private static CoreAssumption assumption(
      double[] cores, double[] loss, double least, double leastPx2) {
    double best = Double.NaN;
    double narrowest = Double.POSITIVE_INFINITY;
    double widest = 0;
    for (int i = 0; i < loss.length; i++) {
      if (loss[i] < least + 0.5) {
        narrowest = Math.min(narrowest, cores[i]);
        widest = Math.max(widest, cores[i]);
      }
      best = loss[i] == least ? cores[i] : best;
    }
    double error = Math.max(LEAST_ERROR_PX2, Math.min(MOST_ERROR_PX2, (widest - narrowest) / 2));
    return CoreAssumption.usual(leastPx2, best, error);
  }

  /** Half-maximum width of the core behind the discs of a solution, the pixel included. */
  double coreFwhmPx(SceneSolution found) {
    double bare = profile.coreFwhmPx(profile.predictedPx2(found, frames));
    return Math.hypot(bare, Moments.FWHM_PER_SIGMA * Math.sqrt(PIXEL_PX2));
  }

  /**
   * Logarithm of the odds that the core found is right and not that of the other solution. A form
   * that suits best a core finer than any camera's is the sampling's and says nothing.
   */
  double odds(SceneSolution found, SceneSolution defocused) {
    double gain =
        profile.likeliestCoreFwhmPx() < FINEST_PX
            ? 0
            : profile.lossNear(profile.predictedPx2(defocused, frames))
                - profile.lossNear(profile.predictedPx2(found, frames));
    double bare = profile.coreFwhmPx(profile.predictedPx2(defocused, frames));
    double tooNarrow = Math.max(0, (NARROWEST_PX - bare) / NARROWEST_SPREAD_PX);
    return Math.max(-MOST_ODDS, Math.min(MOST_ODDS, gain + tooNarrow));
  }
}
