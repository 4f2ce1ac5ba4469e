package rondure.blur;

import java.util.EnumMap;
import java.util.Map;

/**
 * Stars that are clearly oval though narrow: a picture made smaller hides the width of a trail or
 * of a lens's edge behind its pixels, but not its shape. Such a frame is never called sharp.
 */
final class Oval {
  /** Half-way between round and oval: an axis ratio of 1.3 shows at full size (common practice). */
  private static final double ROUNDNESS = 0.74;

  private static final double ROUNDNESS_SPREAD = 0.03;

  /** Narrower along their long axis, stars sit in one or two pixels and have no shape. */
  private static final double LONG_AXIS_PX = 1.5;

  private static final double LONG_AXIS_SPREAD_PX = 0.06;

  /** From this probability on, the pattern over the frame is looked into. */
  static final double CLEAR = 0.5;

  private Oval() {}

  /** Probability that the frame's stars look oval. */
  static double probability(FieldShape shape) {
    double longAxisPx = shape.fwhmPx() / Math.sqrt(Math.max(0.01, shape.roundness()));
    return Excess.logistic((ROUNDNESS - shape.roundness()) / ROUNDNESS_SPREAD)
        * Excess.logistic((longAxisPx - LONG_AXIS_PX) / LONG_AXIS_SPREAD_PX);
  }

  /**
   * Takes from "none" what oval stars contradict and gives it to what draws them out.
   *
   * @param byWidth probabilities from the widths
   * @param direction what the directions say
   * @param trailing probability that a common smear is the sky's
   * @param oval probability that the stars look oval
   */
  static Map<Cause, Double> applied(
      Map<Cause, Double> byWidth, DirectionReading direction, double trailing, double oval) {
    double surplus = byWidth.get(Cause.NONE) - (1 - oval);
    if (surplus <= 0) {
      return byWidth;
    }
    double keep = 1 - surplus / byWidth.get(Cause.NONE);
    // A trail too short to show beside the lens may be there all the same.
    boolean smeared = direction.isSmeared();
    Shares patterns =
        new Shares(0, smeared ? direction.smearPx2() : direction.skyMostPx2(), direction.lensPx2());
    Map<Cause, Double> drawn = patterns.spread(smeared ? trailing : 1, 1);
    double sum = drawn.get(Cause.TRAILING) + drawn.get(Cause.TRIPOD) + drawn.get(Cause.LENS);
    Map<Cause, Double> result = new EnumMap<>(byWidth);
    result.put(Cause.NONE, keep * byWidth.get(Cause.NONE));
    for (Cause cause : new Cause[] {Cause.TRAILING, Cause.TRIPOD, Cause.LENS}) {
      result.merge(cause, surplus * drawn.get(cause) / sum, Double::sum);
    }
    return result;
  }
}
