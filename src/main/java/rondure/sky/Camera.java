package rondure.sky;

import java.util.Optional;

/**
 * Where each pixel looks: a projection about an image centre, with radial distortion.
 *
 * <p>Stored pixel coordinates, centre of the first pixel at (0, 0); camera axes x right, y down, z
 * forward. An ideal image point at distance ρ f from the centre lands at ρ f (1 + k1 ρ²) (Brown
 * 1966, Photogrammetric Engineering 32, 444, first radial term; from memory). With k1 below 0 that
 * grows only up to ρ = 1 / √(-3 k1): the camera sees nothing beyond.
 *
 * @param projection of the ideal lens
 * @param focalLengthPx focal length over pixel pitch
 * @param k1 first radial distortion coefficient, 0 = none
 * @param centreXPx where the optical axis meets the sensor
 * @param centreYPx the same, down
 */
public record Camera(
    Projection projection, double focalLengthPx, double k1, double centreXPx, double centreYPx) {

  public Camera {
    if (!(focalLengthPx > 0 && Double.isFinite(focalLengthPx))) {
      throw new IllegalArgumentException("focalLengthPx must be > 0, was " + focalLengthPx);
    }
    if (!Double.isFinite(k1)) {
      throw new IllegalArgumentException("k1 must be finite, was " + k1);
    }
  }

  /** An undistorted rectilinear camera whose optical axis meets the middle of a frame. */
  public static Camera rectilinear(double focalLengthPx, int widthPx, int heightPx) {
    return new Camera(
        Projection.RECTILINEAR, focalLengthPx, 0, (widthPx - 1) / 2.0, (heightPx - 1) / 2.0);
  }

  /** This camera with another focal length and distortion. */
  public Camera with(double otherFocalLengthPx, double otherK1) {
    return new Camera(projection, otherFocalLengthPx, otherK1, centreXPx, centreYPx);
  }

  /** Whether light from the world falls on a pixel: it lies within the lens's image circle. */
  public boolean sees(double xPx, double yPx) {
    return !Double.isNaN(angleOffAxisRad(xPx, yPx));
  }

  /**
   * Where a pixel looks.
   *
   * @throws IllegalArgumentException when the camera does not see there
   */
  public Direction direction(double xPx, double yPx) {
    double x = xPx - centreXPx;
    double y = yPx - centreYPx;
    double r = length(x, y);
    double theta = requiredAngle(xPx, yPx);
    double perPx = r > 0 ? Math.sin(theta) / r : 0;
    return Direction.of(perPx * x, perPx * y, Math.cos(theta));
  }

  /**
   * Where a direction falls on the (unlimited) sensor plane; empty when the camera cannot see it:
   * behind a rectilinear lens, or beyond where its distortion turns back.
   */
  public Optional<ImagePoint> project(Direction direction) {
    double sine = length(direction.x(), direction.y());
    if (!projection.shows(direction.z())) {
      return Optional.empty();
    }
    double rho = projection.radius(sine, direction.z());
    if (!(1 + 3 * k1 * rho * rho > 0)) {
      return Optional.empty();
    }
    double scale = sine > 0 ? focalLengthPx * rho * (1 + k1 * rho * rho) / sine : 0;
    return Optional.of(
        new ImagePoint(centreXPx + scale * direction.x(), centreYPx + scale * direction.y()));
  }

  /**
   * Velocity of the image of a direction at rest in turning axes: the rotational image flow B ω
   * (for a rectilinear lens: Longuet-Higgins &amp; Prazdny 1980, Proc. R. Soc. B 208, 385).
   */
  public ImageVelocity flow(Spin spin, double xPx, double yPx) {
    return jacobian(xPx, yPx).times(spin);
  }

  /**
   * The matrix B of that flow. With e_r, e_t the radial and tangential unit vectors in the image
   * and r(θ) the radius of an angle off axis, a rotation a moves the image by
   *
   * <pre>
   *   r'(θ) (a · φ̂) e_r - r(θ)/sin θ (a · θ̂) e_t
   * </pre>
   *
   * where θ̂ and φ̂ are the unit vectors of spherical coordinates about the axis.
   */
  public FlowJacobian jacobian(double xPx, double yPx) {
    double x = xPx - centreXPx;
    double y = yPx - centreYPx;
    double r = length(x, y);
    double theta = requiredAngle(xPx, yPx);
    double radius = projection.radius(theta);
    Stretch stretch = stretch(Math.sin(theta), radius, projection.slope(theta));
    double cosPhi = r > 0 ? x / r : 1;
    double sinPhi = r > 0 ? y / r : 0;
    return jacobian(stretch, Math.sin(theta), Math.cos(theta), cosPhi, sinPhi);
  }

  /** The same where the image of a direction falls that the camera sees. */
  FlowJacobian jacobian(Direction seen) {
    double sine = length(seen.x(), seen.y());
    double radius = projection.radius(sine, seen.z());
    Stretch stretch = stretch(sine, radius, projection.slope(sine, seen.z()));
    double cosPhi = sine > 0 ? seen.x() / sine : 1;
    double sinPhi = sine > 0 ? seen.y() / sine : 0;
    return jacobian(stretch, sine, seen.z(), cosPhi, sinPhi);
  }

  private static FlowJacobian jacobian(
      Stretch stretch, double sine, double cosine, double cosPhi, double sinPhi) {
    double radial = stretch.radialPxPerRad();
    double tilt = stretch.tangentialPxPerRad() * cosine;
    double turn = stretch.tangentialPxPerRad() * sine;
    return new FlowJacobian(
        (tilt - radial) * cosPhi * sinPhi,
        radial * cosPhi * cosPhi + tilt * sinPhi * sinPhi,
        -turn * sinPhi,
        -radial * sinPhi * sinPhi - tilt * cosPhi * cosPhi,
        (radial - tilt) * cosPhi * sinPhi,
        turn * cosPhi);
  }

  /**
   * Image scale at a pixel.
   *
   * @param radialPxPerRad away from the centre, dr/dθ
   * @param tangentialPxPerRad around it, r / sin θ
   */
  public record Stretch(double radialPxPerRad, double tangentialPxPerRad) {

    /** No rotation by one radian moves the image farther than this: B's largest singular value. */
    public double largestPxPerRad() {
      return Math.max(radialPxPerRad, tangentialPxPerRad);
    }
  }

  /** Image scale at a pixel; for an ideal rectilinear lens f sec²θ and f sec θ. */
  public Stretch stretch(double xPx, double yPx) {
    double theta = requiredAngle(xPx, yPx);
    return stretch(Math.sin(theta), projection.radius(theta), projection.slope(theta));
  }

  private Stretch stretch(double sine, double rho, double slope) {
    double growth = 1 + k1 * rho * rho;
    return new Stretch(
        focalLengthPx * slope * (1 + 3 * k1 * rho * rho),
        focalLengthPx * growth * (sine > 0 ? rho / sine : 1));
  }

  /** Angle off the axis of what falls on a pixel, rad; NaN when the camera does not see there. */
  public double angleOffAxisRad(double xPx, double yPx) {
    double distorted = length(xPx - centreXPx, yPx - centreYPx) / focalLengthPx;
    double theta = projection.angleRad(RadialDistortion.undone(k1, distorted));
    return theta <= projection.largestAngleRad() ? theta : Double.NaN;
  }

  /**
   * How much farther out than without distortion the lens draws what falls on a pixel, as a share
   * of its distance from the centre: k1 ρ², below 0 for barrel distortion.
   */
  public double distortionShare(double xPx, double yPx) {
    double distorted = length(xPx - centreXPx, yPx - centreYPx) / focalLengthPx;
    double rho = RadialDistortion.undone(k1, distorted);
    return k1 * rho * rho;
  }

  /** √(x² + y²): a camera's numbers are far from the ends of the range that hypot guards. */
  private static double length(double x, double y) {
    return Math.sqrt(x * x + y * y);
  }

  private double requiredAngle(double xPx, double yPx) {
    double theta = angleOffAxisRad(xPx, yPx);
    if (Double.isNaN(theta)) {
      throw new IllegalArgumentException(
          "no light of the world falls on pixel " + xPx + ", " + yPx + " of " + this);
    }
    return theta;
  }
}
