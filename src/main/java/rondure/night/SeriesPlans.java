package rondure.night;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * Where the focus may have stood at each frame of a series, counted in steps: one step a frame, one
 * step for every two frames or more, or a step wherever the width changes.
 */
final class SeriesPlans {
  /** Neighbours that differ by less than this share may be repeats. */
  private static final double[] ALIKE = {0.003, 0.006, 0.012, 0.025, 0.05, 0.1};

  private static final int MOST_REPEATS = 4;

  private SeriesPlans() {}

  /**
   * One of them.
   *
   * @param positions of each frame, growing
   * @param bySight whether the widths chose them
   */
  record Plan(List<Double> positions, boolean bySight) {
    Plan {
      positions = List.copyOf(positions);
    }

    double[] array() {
      return positions.stream().mapToDouble(p -> p).toArray();
    }
  }

  /**
   * Positions of all frames, for each plan with enough of them; the plainest plans first.
   *
   * @param leastPositions fewest different positions: three always lie on a parabola
   */
  static List<Plan> of(List<SeriesPoint> run, FieldLevels levels, int leastPositions) {
    Set<Plan> plans = new LinkedHashSet<>();
    int start = run.get(0).order();
    for (int repeats = 1; repeats <= MOST_REPEATS; repeats++) {
      for (int phase = 0; phase < repeats; phase++) {
        int count = repeats;
        int shift = phase;
        plans.add(
            new Plan(
                run.stream().map(p -> (double) ((p.order() - start + shift) / count)).toList(),
                false));
      }
    }
    for (double alike : ALIKE) {
      plans.addAll(bySight(levels.px2(), alike));
    }
    return plans.stream()
        .filter(plan -> plan.positions().stream().distinct().count() >= leastPositions)
        .toList();
  }

  /** A step wherever the width changes; what is alike about the best may be several positions. */
  private static List<Plan> bySight(List<Double> px2, double alike) {
    List<Integer> counts = new ArrayList<>(List.of(1));
    int sharpest = 0;
    for (int i = 1; i < px2.size(); i++) {
      boolean steps = Math.abs(px2.get(i) - px2.get(i - 1)) > alike * px2.get(i);
      int last = counts.size() - 1;
      if (steps) {
        counts.add(1);
      } else {
        counts.set(last, counts.get(last) + 1);
      }
      sharpest = px2.get(i) < px2.get(sharpest) ? i : sharpest;
    }
    int stop = stopOf(counts, sharpest);
    int most = 0;
    for (int k = 0; k < counts.size(); k++) {
      most = k == stop ? most : Math.max(most, counts.get(k));
    }
    List<Plan> plans = new ArrayList<>();
    for (List<Integer> parts : parts(counts.get(stop), most)) {
      List<Integer> own = new ArrayList<>(counts.subList(0, stop));
      own.addAll(parts);
      own.addAll(counts.subList(stop + 1, counts.size()));
      plans.add(new Plan(positions(own), true));
    }
    return plans;
  }

  private static int stopOf(List<Integer> counts, int frame) {
    int end = 0;
    for (int k = 0; k < counts.size(); k++) {
      end += counts.get(k);
      if (frame < end) {
        return k;
      }
    }
    throw new IllegalArgumentException("no frame " + frame);
  }

  /** All ways to share frames out to one to three positions, none with more than so many. */
  private static List<List<Integer>> parts(int frames, int most) {
    List<List<Integer>> parts = new ArrayList<>();
    for (int one = 1; one <= frames; one++) {
      int left = frames - one;
      if (left == 0) {
        parts.add(List.of(one));
      }
      for (int two = 1; two <= left; two++) {
        parts.add(left == two ? List.of(one, two) : List.of(one, two, left - two));
      }
    }
    return parts.stream().filter(p -> p.stream().allMatch(count -> count <= most)).toList();
  }

  private static List<Double> positions(List<Integer> counts) {
    List<Double> positions = new ArrayList<>();
    for (int k = 0; k < counts.size(); k++) {
      positions.addAll(Collections.nCopies(counts.get(k), (double) k));
    }
    return positions;
  }

  static int sharpest(List<SeriesPoint> run) {
    int sharpest = 0;
    for (int i = 1; i < run.size(); i++) {
      sharpest = run.get(i).acrossPx2() < run.get(sharpest).acrossPx2() ? i : sharpest;
    }
    return sharpest;
  }
}
