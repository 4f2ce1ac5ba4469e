package rondure.sim;

/**
 * From directions in camera axes to the sensor: gnomonic with radial distortion.
 *
 * <p>X = x/z, Y = y/z; both are stretched by 1 + k1 (X² + Y²) and scaled by f/p about the sensor's
 * centre. Positions in px, centre of the first pixel at (0, 0).
 */
final class ImagePoint {
  private final double pixelsPerRadian;
  private final double distortionK1;
  private final double centreX;
  private final double centreY;

  ImagePoint(NightPlan plan) {
    this.pixelsPerRadian = plan.pixelsPerRadian();
    this.distortionK1 = plan.lens().distortionK1();
    this.centreX = plan.camera().centreX();
    this.centreY = plan.camera().centreY();
  }

  /**
   * Where a direction falls, after a turn.
   *
   * @param position receives x, y
   * @return false when the direction is more than about 87° off the axis: no image
   */
  boolean of(double[] turn, double[] direction, double[] position) {
    double z = turn[6] * direction[0] + turn[7] * direction[1] + turn[8] * direction[2];
    if (!(z > 0.05)) {
      return false;
    }
    double tanX = (turn[0] * direction[0] + turn[1] * direction[1] + turn[2] * direction[2]) / z;
    double tanY = (turn[3] * direction[0] + turn[4] * direction[1] + turn[5] * direction[2]) / z;
    double scale = pixelsPerRadian * (1 + distortionK1 * (tanX * tanX + tanY * tanY));
    position[0] = centreX + scale * tanX;
    position[1] = centreY + scale * tanY;
    return true;
  }

  /** The unit vector in camera axes that falls on (x, y); distortion undone by iteration. */
  double[] direction(double x, double y) {
    double distortedX = (x - centreX) / pixelsPerRadian;
    double distortedY = (y - centreY) / pixelsPerRadian;
    double stretch = 1;
    for (int i = 0; i < 20; i++) {
      double tan2 = (distortedX * distortedX + distortedY * distortedY) / (stretch * stretch);
      stretch = 1 + distortionK1 * tan2;
    }
    double tanX = distortedX / stretch;
    double tanY = distortedY / stretch;
    double norm = Math.sqrt(tanX * tanX + tanY * tanY + 1);
    return new double[] {tanX / norm, tanY / norm, 1 / norm};
  }
}
