package rondure.blur;

import java.util.Map;
import org.hipparchus.special.Erf;

/**
 * The softness of a frame over an assumed core, shared out, and what that says about the causes.
 *
 * @param corePx2 assumed second moment of the core
 * @param focusPx2 excess that even the sharpest part of the frame has
 * @param smearPx2 excess of the common smear
 * @param lensPx2 excess that comes on top away from the sharpest part
 * @param edgePx2 excess of the outer part over the median
 */
record Excess(double corePx2, double focusPx2, double smearPx2, double lensPx2, double edgePx2) {

  /** Width of the soft threshold around the naming ratios. */
  private static final double RATIO_SPREAD = 0.04;

  private static final double EDGE_RATIO_SPREAD = 0.08;

  static Excess over(double corePx2, WidthReading widths, double smearPx2) {
    double best = Math.max(corePx2, widths.bestPx2());
    double median = Math.max(best, widths.medianPx2());
    return new Excess(
        corePx2, best - corePx2, smearPx2, median - best, Math.max(0, widths.edgePx2() - median));
  }

  /** r.m.s. width over the core's, median over the stars. */
  double widthRatio() {
    return Math.sqrt(1 + (focusPx2 + smearPx2 + lensPx2) / corePx2);
  }

  /** r.m.s. width of the outer part over the core's, the smear left out. */
  double edgeRatio() {
    return Math.sqrt(1 + (focusPx2 + lensPx2 + edgePx2) / corePx2);
  }

  /**
   * Probabilities of the causes.
   *
   * @param trailing probability that a smear is the sky's and not the tripod's
   */
  Map<Cause, Double> probabilities(double trailing, AttributionSettings settings) {
    double soft = logistic((widthRatio() - settings.namedRatio()) / RATIO_SPREAD);
    double edgeShare = edgePx2 / Math.max(1e-9, edgePx2 + focusPx2 + lensPx2);
    double edgeOnly =
        Math.min(1, 2 * edgeShare)
            * logistic((edgeRatio() - settings.namedEdgeRatio()) / EDGE_RATIO_SPREAD);
    double named = Math.max(soft, edgeOnly);
    // Shake that smears one way smears a little in the others too: it takes as much again.
    double shaken = Math.min(focusPx2, smearPx2 * (1 - trailing));
    Shares shares = new Shares(focusPx2 - shaken, smearPx2 + shaken, lensPx2 + edgeOnly * edgePx2);
    return shares.spread(trailing, named);
  }

  /** Share of a normal law below x. */
  static double normalShare(double x) {
    return Erf.erfc(-x / Math.sqrt(2)) / 2;
  }

  static double logistic(double x) {
    return 1 / (1 + Math.exp(-x));
  }
}
