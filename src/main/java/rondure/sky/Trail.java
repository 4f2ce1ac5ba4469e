package rondure.sky;

import java.util.Optional;
import rondure.base.Moments;

/** The path of a star's image during an exposure while directions turn at a steady spin. */
public final class Trail {

  /**
   * Up to this angle of rotation a trail is taken as a straight line at even speed. The next terms,
   * from bending and from the change of scale along the trail, are (2 tan θ · angle)² / 60 of it:
   * below 0.1 % within 70° of a rectilinear axis.
   */
  private static final double STRAIGHT_RAD = 0.02;

  private static final double SEGMENT_RAD = 0.25;
  private static final int MOST_SEGMENTS = 400;

  /** Five points of Gauss and Legendre on [-1, 1] (Abramowitz &amp; Stegun 1964, table 25.4). */
  private static final double[] NODES = {
    -0.906179845938664, -0.538469310105683, 0, 0.538469310105683, 0.906179845938664
  };

  private static final double[] WEIGHTS = {
    0.236926885056189, 0.478628670499366, 0.568888888888889, 0.478628670499366, 0.236926885056189
  };

  private Trail() {}

  /**
   * Where the star now at a pixel is after some time, exact; empty when the camera no longer sees
   * it.
   *
   * @param spin of the directions in camera axes, e.g. {@link Spin#ofSky}
   * @param seconds may be negative: where it was
   */
  public static Optional<ImagePoint> positionAfter(
      Camera camera, Spin spin, ImagePoint now, double seconds) {
    return camera.project(Rotation.of(spin, seconds).apply(camera.direction(now.xPx(), now.yPx())));
  }

  /**
   * Central second moments of the trail, its light even in time: T²/12 v vᵀ while that is good to
   * 0.1 %, the integral along the exact path beyond. Steady motions add as spins: a sag that adds 2
   * px to a trail of 6 px makes one of 8 px.
   *
   * @param spin of the directions in camera axes
   * @param middle where the star is in the middle of the exposure
   * @return empty when the star leaves the camera's view during the exposure
   */
  public static Optional<Moments> moments(
      Camera camera, Spin spin, ImagePoint middle, double exposureSeconds) {
    if (!(exposureSeconds >= 0 && Double.isFinite(exposureSeconds))) {
      throw new IllegalArgumentException("exposureSeconds must be >= 0, was " + exposureSeconds);
    }
    double angle = spin.rateRadPerS() * exposureSeconds;
    if (angle > STRAIGHT_RAD) {
      return integrated(camera, spin, middle, exposureSeconds);
    }
    ImageVelocity velocity = camera.flow(spin, middle.xPx(), middle.yPx());
    double scale = exposureSeconds * exposureSeconds / 12;
    double x = velocity.xPxPerS();
    double y = velocity.yPxPerS();
    return Optional.of(new Moments(scale * x * x, scale * x * y, scale * y * y));
  }

  private static Optional<Moments> integrated(
      Camera camera, Spin spin, ImagePoint middle, double exposureSeconds) {
    double angle = spin.rateRadPerS() * exposureSeconds;
    int segments = (int) Math.min(MOST_SEGMENTS, Math.ceil(angle / SEGMENT_RAD));
    Direction centre = camera.direction(middle.xPx(), middle.yPx());
    PathSums sums = new PathSums();
    for (int segment = 0; segment < segments; segment++) {
      for (int node = 0; node < NODES.length; node++) {
        double share = (segment + 0.5 + NODES[node] / 2) / segments - 0.5;
        Direction turned = Rotation.of(spin, share * exposureSeconds).apply(centre);
        Optional<ImagePoint> at = camera.project(turned);
        if (at.isEmpty()) {
          return Optional.empty();
        }
        double weight = WEIGHTS[node] / (2 * segments);
        sums.add(weight, at.get().xPx() - middle.xPx(), at.get().yPx() - middle.yPx());
      }
    }
    return Optional.of(sums.moments());
  }

  private static final class PathSums {
    private double x;
    private double y;
    private double xx;
    private double xy;
    private double yy;

    /** The weights of all points must sum to 1. */
    void add(double weight, double dx, double dy) {
      x += weight * dx;
      y += weight * dy;
      xx += weight * dx * dx;
      xy += weight * dx * dy;
      yy += weight * dy * dy;
    }

    Moments moments() {
      return new Moments(xx - x * x, xy - x * y, yy - y * y);
    }
  }
}
