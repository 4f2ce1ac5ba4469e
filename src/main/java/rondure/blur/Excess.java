package rondure.blur;

import java.util.EnumMap;
import java.util.Map;

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

  /** Haze and dew cannot be told in one frame: a small constant. */
  private static final double HAZE = 0.02;

  private static final double LEAST = 0.004;

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
    Map<Cause, Double> shares = new EnumMap<>(Cause.class);
    shares.put(Cause.FOCUS, focusPx2 - shaken);
    shares.put(Cause.LENS, lensPx2 + edgeOnly * edgePx2);
    return spread(shares, smearPx2 + shaken, trailing, named);
  }

  /** The largest share has the word: squares of the shares, the smear divided between its two. */
  private static Map<Cause, Double> spread(
      Map<Cause, Double> shares, double smear, double trailing, double named) {
    double focus = square(shares.get(Cause.FOCUS));
    double lens = square(shares.get(Cause.LENS));
    double smeared = square(smear);
    double sum = focus + lens + smeared;
    double scale = sum > 0 ? named / sum : 0;
    Map<Cause, Double> raw = new EnumMap<>(Cause.class);
    raw.put(Cause.NONE, sum > 0 ? 1 - named : 1);
    raw.put(Cause.FOCUS, scale * focus);
    raw.put(Cause.LENS, scale * lens);
    raw.put(Cause.TRAILING, scale * smeared * trailing);
    raw.put(Cause.TRIPOD, scale * smeared * (1 - trailing));
    raw.put(Cause.HAZE, HAZE);
    return normalised(raw);
  }

  /** Floors the entries and makes them sum to 1. */
  static Map<Cause, Double> normalised(Map<Cause, Double> raw) {
    double sum = raw.values().stream().mapToDouble(p -> Math.max(LEAST, p)).sum();
    Map<Cause, Double> result = new EnumMap<>(Cause.class);
    raw.forEach((cause, p) -> result.put(cause, Math.max(LEAST, p) / sum));
    return result;
  }

  static double logistic(double x) {
    return 1 / (1 + Math.exp(-x));
  }

  private static double square(double x) {
    return x * x;
  }
}
