package rondure.blur;

/**
 * What a frame is called from what each cause adds: the largest cause, when all together widen the
 * stars by a quarter over the core (haze only where its halo and what the air took make up a fifth
 * of their light); else haze, when it takes a third of their light; else the lens, when the outer
 * fifth alone is wider by 60 % and the lens has most of that.
 */
final class NamingRule {
  private static final Cause[] WIDENING = {
    Cause.FOCUS, Cause.TRAILING, Cause.TRIPOD, Cause.LENS, Cause.HAZE
  };

  /** Share of the light that must be missing where a halo's second moment names haze. */
  static final double HALO_LOSS_SHARE = 0.2;

  private final double namedRatio;
  private final double namedEdgeRatio;

  NamingRule(AttributionSettings settings) {
    this.namedRatio = settings.namedRatio();
    this.namedEdgeRatio = settings.namedEdgeRatio();
  }

  /**
   * @param sky each term, median over the sky
   * @param edge each term in the outer fifth
   * @param lostShare share of the light that the stars' images miss
   */
  Cause of(Terms sky, Terms edge, double lostShare) {
    if (hazy(sky, lostShare)) {
      return Cause.HAZE;
    }
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

  /** A halo so faint that the star's image misses little light softens nothing one can see. */
  private boolean hazy(Terms sky, double lostShare) {
    return lostShare >= HALO_LOSS_SHARE
        && sky.widening() >= namedRatio
        && largest(sky) == Cause.HAZE;
  }

  private static Cause largest(Terms terms) {
    Cause best = WIDENING[0];
    for (Cause cause : WIDENING) {
      best = terms.of(cause) > terms.of(best) ? cause : best;
    }
    return best;
  }
}
