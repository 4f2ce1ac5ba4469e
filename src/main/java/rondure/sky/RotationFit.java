package rondure.sky;

import java.util.Objects;

/**
 * A rotation that takes one set of directions to another.
 *
 * @param rotation turns the first axes' directions into the second's
 * @param covariance of a small rotation vector that would correct it, in the second axes
 * @param scale typical misfit over what the pairs' errors let expect, per axis; 1 is as expected
 */
public record RotationFit(Rotation rotation, RotationCovariance covariance, double scale) {

  public RotationFit {
    Objects.requireNonNull(rotation, "rotation");
    Objects.requireNonNull(covariance, "covariance");
    if (!(scale >= 0)) {
      throw new IllegalArgumentException("scale must be >= 0, was " + scale);
    }
  }
}
