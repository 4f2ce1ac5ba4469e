package rondure.blur;

/**
 * What a frame is called from what each cause adds: the largest cause, when all together widen the
 * stars by a quarter over the core; else haze, when it takes a third of their light; else the lens,
 * when the outer fifth alone is wider by 60 % and the lens has most of that.
 */
final class NamingRule {
  private static final Cause[] WIDENING = {
    Cause.FOCUS, Cause.TRAILING, Cause.TRIPOD, Cause.LENS, Cause.HAZE
  };

  private final double namedRatio;
  private final double namedEdgeRatio;

  NamingRule(AttributionSettings settings) {
    this.namedRatio = settings.namedRatio();
    this.namedEdgeRatio = settings.namedEdgeRatio();
  }

  /**
   * @param sky each term, median over the sky
   * @param edge each term in the outer fifth
   * @param lostShare share of the stars' light that is lost
   */
  Cause of(Terms sky, Terms edge, double lostShare) {
    if (sky.widening() >= namedRatio) {
      return largest(sky);
    }
    if (lostShare >= FrameLight.HAZE_LOSS_SHARE) {
      return Cause.HAZE;
    }
    boolean lens = edge.widening() >= namedEdgeRatio && largest(edge) == Cause.LENS;
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
