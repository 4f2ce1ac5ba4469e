package rondure.stars;

import java.util.Arrays;
import rondure.base.Moments;
import rondure.base.PixelPlane;

/**
 * The valid pixels around one star with the sky taken off, ready for fitting. Reused from star to
 * star: {@link #cut} refills it.
 */
final class FitPixels {
  /** How far the window reaches across a star, in σ of its short axis. */
  static final double REACH_SIGMAS = 3.5;

  /** Windows of sharp stars are no smaller: about 28 pixels, or 24 of a checkerboard. */
  private static final double LEAST_REACH_PX = 3;

  private static final double LEAST_REACH_SPARSE_PX = 3.9;
  private static final int LARGEST = 1 << 14;

  private int count;
  private double[] xs = new double[1024];
  private double[] ys = new double[1024];
  private double[] values = new double[1024];

  /**
   * Takes the valid pixels within reach of a star: all that lie within 3.5 σ_minor + 0.5 px (at
   * least 3, on sparse lattices 3.9) of the segment that a line of the same elongation would be.
   * Pixels nearer to one of the {@code neighbours} than its own reach are left out.
   *
   * @return false when the window leaves the frame or holds more than 16384 pixels
   */
  boolean cut(PixelPlane plane, Background background, Placed star, Iterable<Placed> neighbours) {
    count = 0;
    Moments moments = star.moments();
    double angle = moments.positionAngleRad();
    double half = Math.sqrt(3 * Math.max(0, moments.majorPx2() - moments.minorPx2()));
    double least =
        plane.lattice() == PixelPlane.Lattice.EVERY_PIXEL ? LEAST_REACH_PX : LEAST_REACH_SPARSE_PX;
    double reach = Math.max(least, REACH_SIGMAS * Math.sqrt(moments.minorPx2()) + 0.5);
    double alongX = Math.cos(angle) * half;
    double alongY = Math.sin(angle) * half;
    int left = (int) Math.ceil(star.xPx() - Math.abs(alongX) - reach);
    int right = (int) Math.floor(star.xPx() + Math.abs(alongX) + reach);
    int top = (int) Math.ceil(star.yPx() - Math.abs(alongY) - reach);
    int bottom = (int) Math.floor(star.yPx() + Math.abs(alongY) + reach);
    if (left < 0 || top < 0 || right >= plane.widthPx() || bottom >= plane.heightPx()) {
      return false;
    }
    long box = (right - left + 1L) * (bottom - top + 1L);
    if (box > LARGEST) {
      return false;
    }
    reserve((int) box);
    for (int y = top; y <= bottom; y++) {
      for (int x = left; x <= right; x++) {
        double away = distanceToSegment(x - star.xPx(), y - star.yPx(), alongX, alongY);
        float value = plane.at(x, y);
        if (away <= reach && !Float.isNaN(value)) {
          add(x, y, value - background.levelAt(x, y));
        }
      }
    }
    for (Placed neighbour : neighbours) {
      leaveOut(star, neighbour);
    }
    return true;
  }

  /** All pixel places within reach of a segment, whether the frame has them or not; values 0. */
  static FitPixels everyPlace(double xPx, double yPx, double alongX, double alongY, double reach) {
    FitPixels places = new FitPixels();
    double halfWidth = Math.abs(alongX) + reach;
    double halfHeight = Math.abs(alongY) + reach;
    for (int y = (int) Math.ceil(yPx - halfHeight); y <= yPx + halfHeight; y++) {
      for (int x = (int) Math.ceil(xPx - halfWidth); x <= xPx + halfWidth; x++) {
        if (distanceToSegment(x - xPx, y - yPx, alongX, alongY) <= reach) {
          places.reserve(places.count + 1);
          places.add(x, y, 0);
        }
      }
    }
    return places;
  }

  /** Distance of a point from the straight line between (−alongX, −alongY) and its opposite. */
  static double distanceToSegment(double dx, double dy, double alongX, double alongY) {
    double square = alongX * alongX + alongY * alongY;
    double part = square > 0 ? (dx * alongX + dy * alongY) / square : 0;
    double clamped = Math.max(-1, Math.min(1, part));
    double acrossX = dx - clamped * alongX;
    double acrossY = dy - clamped * alongY;
    return Math.sqrt(acrossX * acrossX + acrossY * acrossY);
  }

  private void add(int x, int y, double value) {
    xs[count] = x;
    ys[count] = y;
    values[count] = value;
    count++;
  }

  private void reserve(int capacity) {
    if (capacity > xs.length) {
      int size = Math.max(capacity, 2 * xs.length);
      xs = Arrays.copyOf(xs, size);
      ys = Arrays.copyOf(ys, size);
      values = Arrays.copyOf(values, size);
    }
  }

  private void leaveOut(Placed star, Placed neighbour) {
    int kept = 0;
    for (int i = 0; i < count; i++) {
      double toNeighbour = neighbour.distanceInSigmas(xs[i], ys[i]);
      if (toNeighbour > 3 || star.distanceInSigmas(xs[i], ys[i]) < toNeighbour) {
        xs[kept] = xs[i];
        ys[kept] = ys[i];
        values[kept] = values[i];
        kept++;
      }
    }
    count = kept;
  }

  /** Drops the pixel with index {@code i}; the last one takes its place. */
  void drop(int i) {
    count--;
    xs[i] = xs[count];
    ys[i] = ys[count];
    values[i] = values[count];
  }

  int count() {
    return count;
  }

  double x(int i) {
    return xs[i];
  }

  double y(int i) {
    return ys[i];
  }

  /** Counts above the sky level. */
  double value(int i) {
    return values[i];
  }

  double peak() {
    double peak = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < count; i++) {
      peak = Math.max(peak, values[i]);
    }
    return peak;
  }
}
