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

  private final List<FrameModel> models;
  private final List<double[]> left;
  private final int part;
  private final List<Double> off = new ArrayList<>();
  private final List<Double> stated = new ArrayList<>();

  private RepeatNoise(List<FrameModel> models, List<double[]> left, int part) {
    this.models = models;
    this.left = left;
    this.part = part;
  }

  /**
   * @param models frames in order of time
   * @param left what each model leaves of each of its stars' tensors
   * @return variance to be added to that of a star, for each component, px⁴; none where too few
   *     stars are seen twice
   */
  static double[] variancesPx4(List<FrameModel> models, List<double[]> left) {
    double[] added = new double[3];
    for (int part = 0; part < 3; part++) {
      added[part] = new RepeatNoise(models, left, part).variancePx4();
    }
    return added;
  }

  private double variancePx4() {
    for (int j = 1; j < models.size(); j++) {
      compare(j - 1, j);
    }
    if (off.size() < LEAST_DIFFERENCES) {
      return 0;
    }
    double scatter = RobustStats.SIGMA_PER_MAD * middle(off.stream().map(Math::abs).toList());
    return Math.max(0, scatter * scatter - middle(stated)) / 2;
  }

  private void compare(int before, int after) {
    FrameStars old = models.get(before).stars();
    FrameStars now = models.get(after).stars();
    Map<Integer, Integer> places = new HashMap<>();
    for (int i = 0; i < old.count; i++) {
      places.put(old.tracks[i], i);
    }
    places.remove(FrameStars.NO_TRACK);
    List<Double> changes = new ArrayList<>();
    List<Double> variances = new ArrayList<>();
    for (int i = 0; i < now.count; i++) {
      Integer same = places.get(now.tracks[i]);
      if (same != null) {
        double first = old.noise[3 * same + part];
        double second = now.noise[3 * i + part];
        changes.add(left.get(after)[3 * i + part] - left.get(before)[3 * same + part]);
        variances.add(first * first + second * second);
      }
    }
    if (changes.size() >= LEAST_STARS) {
      double common = middle(changes);
      changes.forEach(change -> off.add(change - common));
      stated.addAll(variances);
    }
  }

  private static double middle(List<Double> values) {
    return RobustStats.median(values.stream().mapToDouble(Double::doubleValue).toArray());
  }
}
