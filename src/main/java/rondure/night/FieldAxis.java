package rondure.night;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Positions of the focus from the field's pattern alone, for frames whose steps are not known: the
 * direction in which the patterns of the frames differ most, in units of their noise.
 */
final class FieldAxis {
  private static final int ROUNDS = 60;

  /** The frames must differ along the axis by so many times their noise, r.m.s. */
  private static final double LEAST_SPREAD = 4;

  private FieldAxis() {}

  /**
   * A coordinate for each frame with a noise of about 1, growing from the first to the last; empty
   * where the patterns do not differ enough.
   */
  static Optional<List<Double>> of(List<FieldPattern> patterns) {
    int count = patterns.size();
    double[][] scaled = new double[count][FieldPattern.SIZE];
    for (int k = 0; k < FieldPattern.SIZE; k++) {
      double mean = 0;
      double error = 0;
      for (FieldPattern pattern : patterns) {
        mean += pattern.values().get(k) / count;
        error += Math.pow(pattern.errors().get(k), 2) / count;
      }
      for (int i = 0; i < count; i++) {
        scaled[i][k] = (patterns.get(i).values().get(k) - mean) / Math.sqrt(error);
      }
    }
    double[] axis = mainAxis(scaled);
    List<Double> along = new ArrayList<>();
    double square = 0;
    for (double[] row : scaled) {
      double value = dot(row, axis);
      along.add(value);
      square += value * value / count;
    }
    boolean turned = along.get(count - 1) < along.get(0);
    return Math.sqrt(square) < LEAST_SPREAD
        ? Optional.empty()
        : Optional.of(along.stream().map(value -> turned ? -value : value).toList());
  }

  /** Direction of the largest scatter, by power iteration from the most unlike row. */
  private static double[] mainAxis(double[][] rows) {
    double[] axis = rows[0].clone();
    for (double[] row : rows) {
      axis = dot(row, row) > dot(axis, axis) ? row.clone() : axis;
    }
    for (int round = 0; round < ROUNDS; round++) {
      double[] next = new double[axis.length];
      for (double[] row : rows) {
        double along = dot(row, axis);
        for (int k = 0; k < next.length; k++) {
          next[k] += along * row[k];
        }
      }
      double length = Math.max(1e-300, Math.sqrt(dot(next, next)));
      for (int k = 0; k < next.length; k++) {
        axis[k] = next[k] / length;
      }
    }
    return axis;
  }

  private static double dot(double[] one, double[] two) {
    double sum = 0;
    for (int k = 0; k < one.length; k++) {
      sum += one[k] * two[k];
    }
    return sum;
  }
}
