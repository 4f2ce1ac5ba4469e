package rondure.blur;

import java.util.EnumMap;
import java.util.Map;

/**
 * How much each kind of softness adds, and the word it gives each cause: the largest share has it.
 *
 * @param focusPx2 alike in every direction and everywhere
 * @param smearPx2 along a direction common to the frame: the sky's or the tripod's
 * @param lensPx2 by place in the frame
 */
record Shares(double focusPx2, double smearPx2, double lensPx2) {

  /** Haze and dew cannot be told in one frame: a small constant. */
  private static final double HAZE = 0.02;

  private static final double LEAST = 0.004;

  /**
   * Probabilities of the causes: squares of the shares, the smear divided between its two.
   *
   * @param trailing probability that a smear is the sky's and not the tripod's
   * @param named probability that there is anything to name
   */
  Map<Cause, Double> spread(double trailing, double named) {
    double sum = focusPx2 * focusPx2 + smearPx2 * smearPx2 + lensPx2 * lensPx2;
    double scale = sum > 0 ? named / sum : 0;
    Map<Cause, Double> raw = new EnumMap<>(Cause.class);
    raw.put(Cause.NONE, sum > 0 ? 1 - named : 1);
    raw.put(Cause.FOCUS, scale * focusPx2 * focusPx2);
    raw.put(Cause.LENS, scale * lensPx2 * lensPx2);
    raw.put(Cause.TRAILING, scale * smearPx2 * smearPx2 * trailing);
    raw.put(Cause.TRIPOD, scale * smearPx2 * smearPx2 * (1 - trailing));
    raw.put(Cause.HAZE, HAZE);
    return normalised(raw);
  }

  /** Floors the entries and makes them sum to 1. */
  private static Map<Cause, Double> normalised(Map<Cause, Double> raw) {
    double sum = raw.values().stream().mapToDouble(p -> Math.max(LEAST, p)).sum();
    Map<Cause, Double> result = new EnumMap<>(Cause.class);
    raw.forEach((cause, p) -> result.put(cause, Math.max(LEAST, p) / sum));
    return result;
  }
}
