package rondure.sky;

/**
 * The matrix B at a pixel: how the image there moves when directions turn by a small rotation
 * vector in camera axes, px/rad, 2 x 3.
 *
 * @param xByX motion to the right by rotation about x
 * @param xByY by rotation about y
 * @param xByZ by rotation about z
 * @param yByX motion down by rotation about x
 * @param yByY by rotation about y
 * @param yByZ by rotation about z
 */
public record FlowJacobian(
    double xByX, double xByY, double xByZ, double yByX, double yByY, double yByZ) {

  /** B ω, px/s. */
  public ImageVelocity times(Spin spin) {
    double x = spin.xRadPerS();
    double y = spin.yRadPerS();
    double z = spin.zRadPerS();
    return new ImageVelocity(xByX * x + xByY * y + xByZ * z, yByX * x + yByY * y + yByZ * z);
  }

  /** Bᵀ of a displacement: how much it asks of each rotation in a least-squares fit. */
  Vec pull(double xPx, double yPx) {
    return new Vec(xByX * xPx + yByX * yPx, xByY * xPx + yByY * yPx, xByZ * xPx + yByZ * yPx);
  }
}
