package rondure.stars;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** All sources of a frame, to be asked for those near a place. */
final class Neighbours {
  private static final int CELL_PX = 48;

  private final Map<Long, List<Placed>> cells = new HashMap<>();

  Neighbours(List<Placed> sources) {
    for (Placed source : sources) {
      long key = key(cell(source.xPx()), cell(source.yPx()));
      cells.computeIfAbsent(key, unused -> new ArrayList<>()).add(source);
    }
  }

  private static int cell(double px) {
    return (int) Math.floor(px / CELL_PX);
  }

  private static long key(int column, int row) {
    return ((long) row << 32) ^ (column & 0xffffffffL);
  }

  /**
   * Other sources near a star.
   *
   * @param self the star as the finder saw it, not its own neighbour
   * @param star the star as it is taken now
   * @param reachSigmas how far, in σ of the star in that direction
   * @param leastFlux sources fainter than this share of the star's flux are passed over
   */
  List<Placed> near(Candidate self, Placed star, double reachSigmas, double leastFlux) {
    double reachPx = reachSigmas * Math.sqrt(star.moments().majorPx2());
    List<Placed> found = new ArrayList<>();
    for (int row = cell(star.yPx() - reachPx); row <= cell(star.yPx() + reachPx); row++) {
      for (int column = cell(star.xPx() - reachPx);
          column <= cell(star.xPx() + reachPx);
          column++) {
        for (Placed source : cells.getOrDefault(key(column, row), List.of())) {
          boolean itself = source.xPx() == self.xPx() && source.yPx() == self.yPx();
          if (!itself
              && source.fluxCounts() > leastFlux * star.fluxCounts()
              && star.distanceInSigmas(source.xPx(), source.yPx()) < reachSigmas) {
            found.add(source);
          }
        }
      }
    }
    return found;
  }
}
