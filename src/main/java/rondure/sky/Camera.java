package rondure.sky;

import java.util.Optional;

/**
 * Where each pixel looks: a projection about an image centre, with radial distortion.
 *
 * <p>Stored pixel coordinates, centre of the first pixel at (0, 0); camera axes x right, y down, z
 * forward. An ideal image point at distance ρ f from the centre lands at ρ f (1 + k1 ρ²) (Brown
 * 1966, Photogrammetric Engineering 32, 444, first radial term; from memory).
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

  /** Where a pixel looks. */
  public Direction direction(double xPx, double yPx) {
    return Direction.of((xPx - centreXPx) / focalLengthPx, (yPx - centreYPx) / focalLengthPx, 1);
  }

  /**
   * Where a direction falls on the (unlimited) sensor plane; empty when it is behind the camera.
   */
  public Optional<ImagePoint> project(Direction direction) {
    if (!(direction.z() > 1e-12)) {
      return Optional.empty();
    }
    return Optional.of(
        new ImagePoint(
            centreXPx + focalLengthPx * direction.x() / direction.z(),
            centreYPx + focalLengthPx * direction.y() / direction.z()));
  }

  /**
   * Velocity of the image of a direction at rest in turning axes: the rotational image flow B ω
   * (Longuet-Higgins &amp; Prazdny 1980, Proc. R. Soc. B 208, 385).
   */
  public ImageVelocity flow(Spin spin, double xPx, double yPx) {
    double tangentX = (xPx - centreXPx) / focalLengthPx;
    double tangentY = (yPx - centreYPx) / focalLengthPx;
    double aX = spin.xRadPerS();
    double aY = spin.yRadPerS();
    double aZ = spin.zRadPerS();
    double flowX = aY * (1 + tangentX * tangentX) - aX * tangentX * tangentY - aZ * tangentY;
    double flowY = -aX * (1 + tangentY * tangentY) + aY * tangentX * tangentY + aZ * tangentX;
    return new ImageVelocity(flowX * focalLengthPx, flowY * focalLengthPx);
  }

  /** Tangent of the angle off the axis for a rectilinear lens, ρ = r / focalLengthPx. */
  public double fieldTangent(double xPx, double yPx) {
    return Math.hypot(xPx - centreXPx, yPx - centreYPx) / focalLengthPx;
  }
}
