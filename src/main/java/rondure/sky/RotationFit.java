package rondure.sky;

import java.util.List;
import java.util.Objects;

/**
 * A rotation that takes one set of directions to another.
 *
 * @param rotation turns the first axes' directions into the second's
 * @param covariance of a small rotation vector that would correct it, in the second axes
 * @param scale typical misfit over what the pairs' errors let expect, per axis; 1 is as expected
 * @param weights of the pairs, 0 (outlier, left out) to 1
 */
public record RotationFit(
    Rotation rotation, RotationCovariance covariance, double scale, List<Double> weights) {

  public RotationFit {
    Objects.requireNonNull(rotation, "rotation");
    Objects.requireNonNull(covariance, "covariance");
    weights = List.copyOf(weights);
    if (!(scale >= 0)) {
      throw new IllegalArgumentException("scale must be >= 0, was " + scale);
    }
  }

  /** Number of pairs that count. */
  public int inliers() {
    return (int) weights.stream().filter(weight -> weight > 0).count();
  }
}
