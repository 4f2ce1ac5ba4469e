package rondure.sim;

/**
 * What each cause truly adds to a star's second moment, mean of the two axes, px².
 *
 * @param core lens, sensor and the pixel's own 1/12
 * @param focus the disc that refocusing would cure
 * @param trailing the sky's motion
 * @param tripod the camera's motion, with what it adds to or takes from the sky's
 * @param lens what varies over the field
 * @param haze the halo of dew
 */
public record CauseShares(
    double core, double focus, double trailing, double tripod, double lens, double haze) {

  /** Without haze, which is judged by the light it takes from the stars. */
  CauseShares dry() {
    return new CauseShares(core, focus, trailing, tripod, lens, 0);
  }

  /** Everything above the core. */
  double excess() {
    return focus + trailing + tripod + lens + haze;
  }

  /** How much wider the star is than its core. */
  double widening() {
    return Math.sqrt(Math.max(0, core + excess()) / core);
  }
}
