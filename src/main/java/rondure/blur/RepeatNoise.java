package rondure.blur;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import rondure.base.RobustStats;

/**
 * How much the shape of one star scatters from frame to frame beyond its stated error: pixels that
 * are coarse for sharp stars, eight bits and their compression, air. Told by the same stars in
 * frames that follow each other, where nearly all else is alike; what the frame's stars have in
 * common is taken off.
 */
final class RepeatNoise {
  private static final int LEAST_STARS = 5;
  private static final int LEAST_DIFFERENCES = 30;

  private RepeatNoise() {}

  /**
   * @param models frames in order of time
   * @param left what each model leaves of each of its stars' tensors
   * @return variance to be added to that of a star, for each component, px⁴; none where too few
   *     stars are seen twice
   */
  static double[] variancesPx4(List<FrameModel> models, List<double[]> left) {
    double[] added = new double[3];
    for (int part = 0; part < 3; part++) {
      List<Double> off = new ArrayList<>();
      List<Double> stated = new ArrayList<>();
      for (int j = 1; j < models.size(); j++) {
        FrameStars before = models.get(j - 1).stars();
        FrameStars after = models.get(j).stars();
        compare(new Pair(before, left.get(j - 1), after, left.get(j)), part, off, stated);
      }
      if (off.size() >= LEAST_DIFFERENCES) {
        double scatter = RobustStats.SIGMA_PER_MAD * middle(off.stream().map(Math::abs).toList());
        added[part] = Math.max(0, scatter * scatter - middle(stated)) / 2;
      }
    }
    return added;
  }

  private record Pair(FrameStars before, double[] leftBefore, FrameStars after, double[] left) {}

  private static void compare(Pair pair, int part, List<Double> off, List<Double> stated) {
    Map<Integer, Integer> places = new HashMap<>();
    for (int i = 0; i < pair.before().count; i++) {
      places.put(pair.before().tracks[i], i);
    }
    places.remove(FrameStars.NO_TRACK);
    List<Double> changes = new ArrayList<>();
    for (int i = 0; i < pair.after().count; i++) {
      Integer same = places.get(pair.after().tracks[i]);
      if (same != null) {
        double first = pair.before().noise[3 * same + part];
        double second = pair.after().noise[3 * i + part];
        changes.add(pair.left()[3 * i + part] - pair.leftBefore()[3 * same + part]);
        stated.add(first * first + second * second);
      }
    }
    if (changes.size() < LEAST_STARS) {
      stated.subList(stated.size() - changes.size(), stated.size()).clear();
      return;
    }
    double common = middle(changes);
    changes.forEach(change -> off.add(change - common));
  }

  private static double middle(List<Double> values) {
    return RobustStats.median(values.stream().mapToDouble(Double::doubleValue).toArray());
  }
}
