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

  static TrueCause of(CauseShares sky, CauseShares edge, double transparency) {
    if (sky.widening() >= NAMED_FROM_WIDENING) {
      return largest(sky);
    }
    if (transparency <= HAZY_BELOW) {
      return HAZE;
    }
    return edge.widening() >= EDGE_FROM_WIDENING && largest(edge) == LENS ? LENS : NONE;
  }

  private static TrueCause largest(CauseShares shares) {
    double[] excess = {
      shares.focus(), shares.trailing(), shares.tripod(), shares.lens(), shares.haze()
    };
    int best = 0;
    for (int i = 1; i < excess.length; i++) {
      if (excess[i] > excess[best]) {
        best = i;
      }
    }
    return values()[best + 1];
  }
}
