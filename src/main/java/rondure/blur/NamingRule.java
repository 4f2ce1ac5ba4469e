package rondure.blur;

/**
 * What a frame is called from what each cause adds: the largest cause, when all that widens the
 * stars makes them a quarter wider than the core; else haze, when it takes a third of their light;
 * else the lens, when the outer fifth alone is wider by 60 % and the lens has most of that.
 *
 * <p>A halo counts by the light in it and not by its moment: of two Gaussians the wider must hold
 * 71 % of the light before half the peak lies a quarter farther out, whatever its width.
 */
final class NamingRule {
  private static final Cause[] WIDENING = {Cause.FOCUS, Cause.TRAILING, Cause.TRIPOD, Cause.LENS};

  private final double namedRatio;
  private final double namedEdgeRatio;

  NamingRule(AttributionSettings settings) {
    this.namedRatio = settings.namedRatio();
    this.namedEdgeRatio = settings.namedEdgeRatio();
  }

  /**
   * @param sky each term, median over the sky
   * @param edge each term in the outer fifth
   * @param lostShare share of the light that is not in the stars any more
   */
  Cause of(Terms sky, Terms edge, double lostShare) {
    Terms dry = sky.withHaze(0);
    if (dry.widening() >= namedRatio) {
      return largest(dry);
    }
    if (lostShare >= FrameLight.HAZE_LOSS_SHARE) {
      return Cause.HAZE;
    }
    Terms outer = edge.withHaze(0);
    boolean lens = outer.widening() >= namedEdgeRatio && largest(outer) == Cause.LENS;
    return lens ? Cause.LENS : Cause.NONE;
  }

  private static Cause largest(Terms terms) {
    Cause best = WIDENING[0];
    for (Cause cause : WIDENING) {
      best = terms.of(cause) > terms.of(best) ? cause : best;
    }
    return best;
  }
}
