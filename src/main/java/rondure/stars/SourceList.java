package rondure.stars;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Turns footprints into sources, one for each distinct peak. */
final class SourceList {
  private static final double VOTING_SNR = 8;
  private static final int MOST_VOTERS = 400;

  private SourceList() {}

  /** The sources of all footprints, in raster order of the footprints. */
  static List<Source> of(
      FootprintRuns footprints, ScaleSpace space, SourceMeter meter, double detectionSnr) {
    int scale = commonScale(footprints, space, meter);
    List<Source> sources = new ArrayList<>();
    for (int index = 0; index < footprints.size(); index++) {
      Places[] basins = Places.of(footprints, index).basins(space, scale);
      int main = basins.length == 1 ? 0 : mainBasin(basins, space, scale);
      for (int i = 0; i < basins.length; i++) {
        int widest = i == main ? space.scales() - 1 : scale;
        meter.measure(basins[i], widest, detectionSnr).ifPresent(sources::add);
      }
    }
    return sources;
  }

  private static int mainBasin(Places[] basins, ScaleSpace space, int scale) {
    int main = 0;
    double best = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < basins.length; i++) {
      double height = basins[i].highest(space, scale)[scale];
      if (height > best) {
        best = height;
        main = i;
      }
    }
    return main;
  }

  /**
   * The scale that suits most sources of the frame: peaks are told apart on it, so that a frame of
   * wide discs is not split into their bumps nor a sharp one blurred together. Light that may be in
   * a single photosite has no vote unless there is nothing else.
   */
  private static int commonScale(FootprintRuns footprints, ScaleSpace space, SourceMeter meter) {
    int[] votes = new int[space.scales()];
    int[] doubtful = new int[space.scales()];
    int step = 1 + footprints.size() / MOST_VOTERS;
    for (int index = 0; index < footprints.size(); index += step) {
      Optional<Source> source =
          meter.measure(Places.of(footprints, index), space.scales() - 1, VOTING_SNR);
      if (source.isPresent()) {
        boolean single = HotPixelRule.maybeSingle(source.get().spread());
        (single ? doubtful : votes)[source.get().scale()]++;
      }
    }
    int winner = largest(votes);
    return votes[winner] > 0 ? winner : largest(doubtful);
  }

  private static int largest(int[] votes) {
    int best = 0;
    for (int i = 1; i < votes.length; i++) {
      best = votes[i] > votes[best] ? i : best;
    }
    return best;
  }
}
