package rondure.sky;

import java.util.ArrayList;
import java.util.List;

/**
 * How far a camera's focal length and distortion may be wrong, and what that does to the spins that
 * are seen through it.
 *
 * @param focalVariance of ln f
 * @param k1Variance of k1
 * @param covariance of both
 */
record CameraDoubt(double focalVariance, double k1Variance, double covariance) {
  private static final int GRID = 12;
  private static final double STEP = 1e-4;

  CameraDoubt {
    if (!(focalVariance >= 0 && k1Variance >= 0 && Double.isFinite(covariance))) {
      throw new IllegalArgumentException(
          "variances must be >= 0, were " + focalVariance + ", " + k1Variance);
    }
  }

  /** Standard errors that are not correlated. */
  static CameraDoubt of(double focalShare, double k1Error) {
    return new CameraDoubt(focalShare * focalShare, k1Error * k1Error, 0);
  }

  /**
   * Standard errors of a spin, over its rate.
   *
   * @param alongShare of the rate
   * @param acrossRad of the direction, both ways together
   */
  record Bend(double alongShare, double acrossRad) {}

  /**
   * What the doubt makes of a spin of the stars.
   *
   * @param spin in camera axes, of any length but zero
   */
  Bend bend(Camera camera, Vec spin) {
    Vec axis = spin.withLength(1);
    Vec byFocal =
        shift(camera, camera.with(camera.focalLengthPx() * (1 + STEP), camera.k1()), axis);
    Vec byK1 = shift(camera, camera.with(camera.focalLengthPx(), camera.k1() + STEP), axis);
    double along = variance(byFocal.dot(axis), byK1.dot(axis), byFocal.dot(axis) * byK1.dot(axis));
    Vec focalAcross = byFocal.minus(axis.times(byFocal.dot(axis)));
    Vec k1Across = byK1.minus(axis.times(byK1.dot(axis)));
    double across = variance(focalAcross.length(), k1Across.length(), focalAcross.dot(k1Across));
    return new Bend(Math.sqrt(along), Math.sqrt(across));
  }

  private double variance(double byFocal, double byK1, double product) {
    return Math.max(
        0, focalVariance * byFocal * byFocal + k1Variance * byK1 * byK1 + 2 * covariance * product);
  }

  /**
   * How the spin fitted through a camera differs when the stars' velocities are another camera's,
   * over the difference: least squares over places all over the frame, Δω = (Σ BᵀB)⁻¹ Σ Bᵀ ΔB ω.
   */
  private static Vec shift(Camera camera, Camera other, Vec spin) {
    List<FlowJacobian> flows = new ArrayList<>();
    Vec pull = Vec.ZERO;
    for (int i = 0; i < GRID * GRID; i++) {
      double x = (2 * camera.centreXPx() + 1) * (i % GRID + 0.5) / GRID - 0.5;
      double y = (2 * camera.centreYPx() + 1) * (i / GRID + 0.5) / GRID - 0.5;
      if (camera.sees(x, y) && other.sees(x, y)) {
        FlowJacobian flow = camera.jacobian(x, y);
        ImageVelocity seen = other.flow(spin.spin(), x, y);
        ImageVelocity told = flow.times(spin.spin());
        flows.add(flow);
        pull =
            pull.plus(flow.pull(seen.xPxPerS() - told.xPxPerS(), seen.yPxPerS() - told.yPxPerS()));
      }
    }
    Information normal = Information.ofFlows(flows);
    return normal.isRegular() ? normal.inverse().times(pull).times(1 / STEP) : Vec.ZERO;
  }
}
