package rondure.blur;

import java.util.EnumMap;
import java.util.Map;

/**
 * From odds, which know only what the model knows, to probabilities of which about so many come
 * true where all causes are equally frequent: pᵢ = (1 − s) qᵢ + s/6, q the odds' powers,
 * normalised, of which a part of "none" is moved to haze.
 *
 * @param power to which odds are taken; above 1 where they were not sure enough
 * @param hazeShare of what looks like "none": haze that nothing in the frames shows
 * @param strayShare of frames about which the model is astray, spread evenly over the causes
 */
public record Calibration(double power, double hazeShare, double strayShare) {

  public Calibration {
    if (!(power > 0 && hazeShare >= 0 && hazeShare <= 1 && strayShare >= 0 && strayShare < 1)) {
      throw new IllegalArgumentException(
          "power must be > 0, shares in [0, 1), were "
              + power
              + ", "
              + hazeShare
              + ", "
              + strayShare);
    }
  }

  /** Odds as they are. */
  static final Calibration NONE = new Calibration(1, 0, 0);

  private static final Map<Ground, Calibration> FITTED =
      new EnumMap<>(
          Map.of(
              Ground.SEQUENCE, new Calibration(1.4, 0, 0.02),
              Ground.FEW_FRAMES, new Calibration(1.4, 0, 0.02),
              Ground.NO_EXPOSURES, new Calibration(1.4, 0, 0.04),
              Ground.LONE, new Calibration(1.4, 0.18, 0.04),
              Ground.LONE_NO_EXPOSURE, new Calibration(1.4, 0.18, 0.04)));

  /** Fitted on the calibration nights (docs/accuracy.md says how to do that again). */
  public static Calibration fitted(Ground ground) {
    return FITTED.get(ground);
  }

  /** Probabilities, summing to 1. */
  public Map<Cause, Double> of(Map<Cause, Double> odds) {
    double sum = odds.values().stream().mapToDouble(p -> Math.pow(p, power)).sum();
    Map<Cause, Double> powers = new EnumMap<>(Cause.class);
    odds.forEach((cause, p) -> powers.put(cause, Math.pow(p, power) / sum));
    double unseen = hazeShare * powers.get(Cause.NONE);
    powers.merge(Cause.NONE, -unseen, Double::sum);
    powers.merge(Cause.HAZE, unseen, Double::sum);
    return Mixing.mix(Mixing.even(), strayShare, powers);
  }
}
