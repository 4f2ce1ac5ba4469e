package rondure.stars;

import java.util.List;

/**
 * Tells light in one photosite from a star, as far as one frame can.
 *
 * <p>A hot pixel leaves its neighbours of the same colour dark. How dark they may be for a star
 * depends on the sampling: never less than half of what the sharpest lens would give, and in a
 * frame whose stars are known, never less than a third of what these have. Where hardly any source
 * is spread out at all (lens cap on), doubtful ones count as hot too.
 */
record HotPixelRule(double typicalShare, boolean onlyHotPixels) {
  private static final double CONTRAST_SIGMAS = 5;
  private static final double SHARE_OF_SHARPEST = 0.5;
  private static final double SHARE_OF_TYPICAL = 0.35;
  private static final double LARGEST_SHARE = 1;
  private static final double TYPICAL_SNR = 15;
  private static final double DOUBT_SIGMAS = 2;
  private static final double FEW = 0.1;

  /** Learns from a frame's sources how far its stars spread. */
  static HotPixelRule of(List<Source> sources) {
    long spreadOut = sources.stream().filter(source -> !maybeSingle(source.spread())).count();
    double[] shares =
        sources.stream()
            .filter(source -> source.filterSnr() >= TYPICAL_SNR && !maybeSingle(source.spread()))
            .mapToDouble(source -> source.spread().neighbourShare())
            .sorted()
            .toArray();
    double typical = shares.length == 0 ? 0 : shares[shares.length / 2];
    boolean onlyHot = spreadOut < FEW * (sources.size() - spreadOut);
    return new HotPixelRule(typical, onlyHot);
  }

  /** True when the source's light may lie in one photosite, noise considered. */
  static boolean maybeSingle(PeakSpread spread) {
    double least = spread.neighbourShare() - DOUBT_SIGMAS * spread.noiseShare();
    return least < SHARE_OF_SHARPEST * spread.sharpestStarShare();
  }

  boolean isHot(PeakSpread spread) {
    if (!(spread.contrastSigmas() > CONTRAST_SIGMAS)) {
      return false;
    }
    if (onlyHotPixels && maybeSingle(spread)) {
      return true;
    }
    double sharpest = SHARE_OF_SHARPEST * spread.sharpestStarShare();
    double typical = Math.min(LARGEST_SHARE, SHARE_OF_TYPICAL * typicalShare);
    return spread.neighbourShare() < Math.max(sharpest, typical);
  }
}
