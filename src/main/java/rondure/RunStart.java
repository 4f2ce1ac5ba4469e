package rondure;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What a run has before it and how long that should take.
 *
 * @param exposures frames; copies of one exposure count once
 * @param measuredBefore how many of them an earlier run has measured
 * @param folders folders that hold them
 * @param filesByFormat files of each format, in the formats' order
 * @param megapixels of all exposures together, as far as their headers say
 * @param workers processes that measure at one time
 */
public record RunStart(
    int exposures,
    int measuredBefore,
    int folders,
    Map<String, Integer> filesByFormat,
    double megapixels,
    int workers) {

  /**
   * Pixels that one worker decodes and measures, 10⁶ px/s: the runs in docs/performance.md gave 18
   * with everything else included.
   */
  public static final double MEGAPIXELS_PER_SECOND = 20;

  /** A worker's time for a frame of no size, s: from the run of 2,000 small frames. */
  private static final double SECONDS_PER_FRAME = 0.1;

  /** Starting workers and writing the report, s. */
  private static final double SECONDS_ASIDE = 5;

  public RunStart {
    filesByFormat = Collections.unmodifiableMap(new LinkedHashMap<>(filesByFormat));
    if (measuredBefore < 0 || measuredBefore > exposures) {
      throw new IllegalArgumentException(
          "measuredBefore must be 0 to " + exposures + ", was " + measuredBefore);
    }
    if (exposures < 0 || folders < 0 || workers < 1 || !(megapixels >= 0)) {
      throw new IllegalArgumentException(
          "counts must be >= 0 and workers >= 1, were "
              + exposures
              + ", "
              + folders
              + ", "
              + megapixels
              + ", "
              + workers);
    }
  }

  /** Expected time from now to the report, s. */
  public double expectedSeconds() {
    int left = exposures - measuredBefore;
    double share = (double) left / Math.max(1, exposures);
    double oneWorker = left * SECONDS_PER_FRAME + share * megapixels / MEGAPIXELS_PER_SECOND;
    return SECONDS_ASIDE + oneWorker / Math.min(workers, Math.max(1, left));
  }
}
