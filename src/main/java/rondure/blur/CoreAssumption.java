package rondure.blur;

import java.util.Optional;

/**
 * What a fit takes for the scene's core.
 *
 * @param leastPx2 what diffraction and pixel leave of the finest star
 * @param usualPx2 about what core is expected, every frame then being free to be out of focus;
 *     empty: the sharpest frames are in focus as near as the lens lets them tell, and the core is
 *     found
 * @param errorPx2 how far the core may be from what is expected, one standard error
 */
record CoreAssumption(double leastPx2, Optional<Double> usualPx2, double errorPx2) {

  static CoreAssumption found(double leastPx2) {
    return new CoreAssumption(leastPx2, Optional.empty(), 0);
  }

  static CoreAssumption usual(double leastPx2, double px2, double errorPx2) {
    return new CoreAssumption(leastPx2, Optional.of(px2), errorPx2);
  }

  /** Where a fit begins. */
  double startPx2(double sharpestPx2) {
    return usualPx2.orElse(Math.max(leastPx2, sharpestPx2));
  }
}
