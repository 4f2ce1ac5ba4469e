package rondure.sky;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import rondure.stars.Detection;
import rondure.stars.Refusal;
import rondure.stars.Star;
import rondure.stars.StarField;

/** What may be stars in one frame, brightest first, as plain arrays: places and directions. */
final class FrameStars {
  /** More are not needed to find a rotation. */
  private static final int MOST = 900;

  /** Centroids are not better than this over the frame: lens, pixels, crowding, px. */
  private static final double LEAST_ERROR_PX = 0.05;

  /** A detection without a shape has a rough place, px. */
  private static final double ROUGH_ERROR_PX = 0.35;

  /** Stars are sparse, and are searched within 1 to 12 px. */
  private static final double CELL_PX = 8;

  final int count;
  final double[] x;
  final double[] y;
  final double[] errorPx;
  final double[] dx;
  final double[] dy;
  final double[] dz;

  /** Index among the field's measured stars, or -1. */
  final int[] measured;

  final double areaPx2;
  final PointGrid grid;
  private final int widthPx;
  private final int heightPx;

  private record Seen(double x, double y, double flux, double errorPx, int measured) {}

  FrameStars(StarField field, Camera camera) {
    List<Seen> seen = list(field).stream().filter(s -> camera.sees(s.x(), s.y())).toList();
    count = Math.min(MOST, seen.size());
    x = new double[count];
    y = new double[count];
    errorPx = new double[count];
    dx = new double[count];
    dy = new double[count];
    dz = new double[count];
    measured = new int[count];
    for (int i = 0; i < count; i++) {
      Seen spot = seen.get(i);
      x[i] = spot.x();
      y[i] = spot.y();
      errorPx[i] = spot.errorPx();
      measured[i] = spot.measured();
      Direction direction = camera.direction(spot.x(), spot.y());
      dx[i] = direction.x();
      dy[i] = direction.y();
      dz[i] = direction.z();
    }
    widthPx = field.widthPx();
    heightPx = field.heightPx();
    areaPx2 = (double) widthPx * heightPx;
    grid = new PointGrid(x, y, count, CELL_PX);
  }

  private static List<Seen> list(StarField field) {
    List<Seen> seen = new ArrayList<>();
    for (int i = 0; i < field.stars().size(); i++) {
      Star star = field.stars().get(i);
      double random = Math.sqrt(2) * star.moments().rmsWidthPx() / star.snr();
      double error = Math.hypot(LEAST_ERROR_PX, random);
      seen.add(new Seen(star.xPx(), star.yPx(), star.fluxCounts(), error, i));
    }
    for (Detection other : field.others()) {
      if (canBeStar(other.reason())) {
        seen.add(new Seen(other.xPx(), other.yPx(), other.fluxCounts(), ROUGH_ERROR_PX, -1));
      }
    }
    seen.sort(Comparator.comparingDouble(Seen::flux).reversed());
    return seen;
  }

  private static boolean canBeStar(Refusal reason) {
    return switch (reason) {
      case HOT_PIXEL, STATIC, STREAK, NOT_SKY -> false;
      case SATURATED, CROWDED, EDGE, TOO_FAINT, NOT_SETTLED -> true;
    };
  }

  Direction direction(int i) {
    return new Direction(dx[i], dy[i], dz[i]);
  }

  boolean holds(double px, double py) {
    return px > -0.5 && py > -0.5 && px < widthPx - 0.5 && py < heightPx - 0.5;
  }

  double diagonalPx() {
    return Math.hypot(widthPx, heightPx);
  }

  /** Chance that a place taken at random has one of the brightest stars within a radius. */
  double chance(int brightest, double radiusPx) {
    double share = Math.min(brightest, count) * Math.PI * radiusPx * radiusPx / areaPx2;
    return 1 - Math.exp(-share);
  }
}
