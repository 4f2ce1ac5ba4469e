package rondure.sim;

import com.fasterxml.jackson.annotation.JsonProperty;

/**
 * What mainly softened a frame. A cause is named when all together widen the star by a quarter over
 * its core (for the lens, 60 % in the outer fifth also counts), or when a star loses 35 % of its
 * light.
 */
public enum TrueCause {
  @JsonProperty("none")
  NONE,
  @JsonProperty("focus")
  FOCUS,
  @JsonProperty("trailing")
  TRAILING,
  @JsonProperty("tripod")
  TRIPOD,
  @JsonProperty("lens")
  LENS,
  @JsonProperty("haze")
  HAZE;

  private static final double NAMED_FROM_WIDENING = 1.25;
  private static final double EDGE_FROM_WIDENING = 1.60;
  private static final double HAZY_BELOW = 0.65;

  /**
   * The largest of what widens the star by a quarter; else haze, where a third of the light is
   * gone; else the lens, where it widens the outer fifth alone. A halo is judged by the light in
   * it: to widen a star at half its height by a quarter it would have to hold 71 % of the light.
   *
   * @param starLight share of the light that is left in the star itself
   */
  static TrueCause of(CauseShares sky, CauseShares edge, double starLight) {
    CauseShares dry = sky.dry();
    if (dry.widening() >= NAMED_FROM_WIDENING) {
      return largest(dry);
    }
    if (starLight <= HAZY_BELOW) {
      return HAZE;
    }
    CauseShares outer = edge.dry();
    return outer.widening() >= EDGE_FROM_WIDENING && largest(outer) == LENS ? LENS : NONE;
  }

  private static TrueCause largest(CauseShares shares) {
    double[] excess = {shares.focus(), shares.trailing(), shares.tripod(), shares.lens()};
    int best = 0;
    for (int i = 1; i < excess.length; i++) {
      if (excess[i] > excess[best]) {
        best = i;
      }
    }
    return values()[best + 1];
  }
}
