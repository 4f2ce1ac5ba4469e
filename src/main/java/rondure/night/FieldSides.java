package rondure.night;

import java.util.List;
import java.util.Optional;

/**
 * Reads the position of a frame's focus, with its sign, from the pattern of its field, after a
 * series has shown how the pattern goes with the position: each of its numbers is linear in it.
 */
final class FieldSides {
  /** The series shows the way when the slopes together exceed their errors so often. */
  private static final double LEAST_SIGMAS = 5;

  private final double[] level = new double[FieldPattern.SIZE];
  private final double[] slope = new double[FieldPattern.SIZE];
  private final double[] variance = new double[FieldPattern.SIZE];
  private final double[] slopeVariance = new double[FieldPattern.SIZE];
  private final double middle;

  /**
   * A position.
   *
   * @param at in the series' unit
   * @param error standard error
   */
  record Position(double at, double error) {}

  private FieldSides(List<Double> positions, List<FieldPattern> patterns) {
    middle = positions.stream().mapToDouble(p -> p).average().orElse(0);
    double spread = positions.stream().mapToDouble(p -> (p - middle) * (p - middle)).sum();
    int free = Math.max(1, positions.size() - 2);
    for (int k = 0; k < FieldPattern.SIZE; k++) {
      double error = 0;
      for (int i = 0; i < patterns.size(); i++) {
        level[k] += patterns.get(i).values().get(k) / patterns.size();
        slope[k] += patterns.get(i).values().get(k) * (positions.get(i) - middle) / spread;
        error += Math.pow(patterns.get(i).errors().get(k), 2) / patterns.size();
      }
      double left = 0;
      for (int i = 0; i < patterns.size(); i++) {
        double line = level[k] + slope[k] * (positions.get(i) - middle);
        left += Math.pow(patterns.get(i).values().get(k) - line, 2) / free;
      }
      variance[k] = Math.max(error, left);
      slopeVariance[k] = variance[k] / spread;
    }
  }

  /**
   * Empty where the pattern does not go with the position.
   *
   * @param positions of the series' frames
   * @param patterns of the same
   */
  static Optional<FieldSides> of(List<Double> positions, List<FieldPattern> patterns) {
    if (patterns.size() < 4 || positions.stream().distinct().count() < 3) {
      return Optional.empty();
    }
    FieldSides sides = new FieldSides(positions, patterns);
    double proof = 0;
    for (int k = 0; k < FieldPattern.SIZE; k++) {
      proof += sides.slope[k] * sides.slope[k] / sides.slopeVariance[k];
    }
    return proof >= LEAST_SIGMAS * LEAST_SIGMAS + FieldPattern.SIZE
        ? Optional.of(sides)
        : Optional.empty();
  }

  /** Where the focus of a frame with this pattern is. */
  Position position(FieldPattern pattern) {
    double sum = 0;
    double weight = 0;
    for (int k = 0; k < FieldPattern.SIZE; k++) {
      double own = Math.pow(pattern.errors().get(k), 2) + variance[k];
      sum += slope[k] * (pattern.values().get(k) - level[k]) / own;
      weight += slope[k] * slope[k] / own;
    }
    return new Position(middle + sum / weight, 1 / Math.sqrt(weight));
  }
}
