package rondure.sky;

import java.util.Optional;

/**
 * A camera whose lens keeps straight lines straight (gnomonic projection).
 *
 * @param focalLengthPx focal length over pixel pitch
 * @param centreXPx where the optical axis meets the sensor, stored pixel coordinates
 * @param centreYPx the same, down
 */
public record RectilinearCamera(double focalLengthPx, double centreXPx, double centreYPx) {

  public RectilinearCamera {
    if (!(focalLengthPx > 0 && Double.isFinite(focalLengthPx))) {
      throw new IllegalArgumentException("focalLengthPx must be > 0, was " + focalLengthPx);
    }
  }

  /** A camera whose optical axis meets the middle of a frame. */
  public static RectilinearCamera centred(double focalLengthPx, int widthPx, int heightPx) {
    return new RectilinearCamera(focalLengthPx, (widthPx - 1) / 2.0, (heightPx - 1) / 2.0);
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

  /** Tangent of the angle off the axis, ρ = r / focalLengthPx. */
  public double fieldTangent(double xPx, double yPx) {
    return Math.hypot(xPx - centreXPx, yPx - centreYPx) / focalLengthPx;
  }
}
