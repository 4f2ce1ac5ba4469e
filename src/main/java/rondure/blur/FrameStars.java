package rondure.blur;

import java.util.List;
import rondure.base.Moments;
import rondure.base.RobustStats;
import rondure.sky.Camera;
import rondure.sky.ImageVelocity;
import rondure.sky.Spin;
import rondure.stars.Star;

/**
 * The tensors of one frame's stars in plain arrays, with what is known of each place beforehand.
 *
 * <p>A tensor is three numbers, px²: round (Mxx + Myy)/2, along (Mxx - Myy)/2, diagonal Mxy, at
 * {@code [3 i]}, {@code [3 i + 1]}, {@code [3 i + 2]} of star i. Errors are one standard deviation
 * with a floor for what no smooth model describes.
 */
final class FrameStars {
  private static final int MOST_STARS = 400;
  private static final double FLOOR_PX2 = 0.015;
  private static final double FLOOR_SHARE = 0.025;

  final int count;

  /** From the image centre, in half diagonals. */
  final double[] x;

  final double[] y;
  final double[] seen;
  final double[] error;

  /** Measuring errors alone. */
  final double[] noise;

  /** The sky's own motion over the nominal exposure. */
  final double[] trail;

  /** All steady motion of the stars over the nominal exposure. */
  final double[] moved;

  /** What a turn of the camera adds that moves the centre by 1 px r.m.s. along x, y; and both. */
  final double[] shakeX;

  final double[] shakeY;
  final double[] shakeXY;

  /** f-number of the scene's widest aperture over this frame's. */
  final double stop;

  /** Half the frame's width in half diagonals. */
  final double halfWidth;

  /** Round part of the sky's own trail in the image centre. */
  final double centreTrail;

  /** (Mxx - Myy)/2 of that trail. */
  final double centreTrailAlong;

  /** Mxy of that trail. */
  final double centreTrailDiagonal;

  /** Round part of all steady motion in the image centre. */
  final double centreMoved;

  /**
   * How the stars move in the frame.
   *
   * @param sky the sky's own motion; none on a mount that follows it
   * @param stars all steady motion
   * @param exposureSeconds nominal
   * @param stop f-number of the scene's widest aperture over this frame's
   */
  record Motion(Spin sky, Spin stars, double exposureSeconds, double stop) {}

  private FrameStars(
      List<Star> stars, Camera camera, double halfDiagonalPx, double halfWidth, Motion motion) {
    count = stars.size();
    stop = motion.stop();
    this.halfWidth = halfWidth;
    double[] centre = new double[3];
    fillCentre(centre, camera, motion.sky(), motion.exposureSeconds());
    centreTrail = centre[0];
    centreTrailAlong = centre[1];
    centreTrailDiagonal = centre[2];
    fillCentre(centre, camera, motion.stars(), motion.exposureSeconds());
    centreMoved = centre[0];
    x = new double[count];
    y = new double[count];
    seen = new double[3 * count];
    error = new double[3 * count];
    noise = new double[3 * count];
    trail = new double[3 * count];
    moved = new double[3 * count];
    shakeX = new double[3 * count];
    shakeY = new double[3 * count];
    shakeXY = new double[3 * count];
    for (int i = 0; i < count; i++) {
      Star star = stars.get(i);
      x[i] = (star.xPx() - camera.centreXPx()) / halfDiagonalPx;
      y[i] = (star.yPx() - camera.centreYPx()) / halfDiagonalPx;
      fillSeen(i, star);
      fillMotion(i, star, camera, motion);
    }
  }

  /**
   * The brightest stars of a frame.
   *
   * @param stars measured, brightest first
   * @param widthPx of the frame
   * @param heightPx of the frame
   */
  static FrameStars of(List<Star> stars, Camera camera, int widthPx, int heightPx, Motion motion) {
    List<Star> known = stars.stream().filter(FrameStars::isKnown).limit(MOST_STARS).toList();
    double half = Math.hypot(widthPx, heightPx) / 2;
    return new FrameStars(known, camera, half, widthPx / 2.0 / half, motion);
  }

  private static void fillCentre(double[] into, Camera camera, Spin spin, double seconds) {
    ImageVelocity velocity = camera.flow(spin, camera.centreXPx(), camera.centreYPx());
    putProduct(into, 0, velocity, velocity, seconds * seconds / 12);
  }

  /** The cell of each star in a grid over the frame, row by row. */
  int[] cells(int columns, int rows) {
    double halfHeight = Math.sqrt(1 - halfWidth * halfWidth);
    int[] cells = new int[count];
    for (int i = 0; i < count; i++) {
      int column = (int) Math.floor(columns * (x[i] / halfWidth + 1) / 2);
      int row = (int) Math.floor(rows * (y[i] / halfHeight + 1) / 2);
      cells[i] =
          Math.max(0, Math.min(rows - 1, row)) * columns
              + Math.max(0, Math.min(columns - 1, column));
    }
    return cells;
  }

  /** Median over the stars of the round part that steady motion leaves. */
  double stillRoundPx2(double lengthening) {
    double[] left = new double[count];
    for (int i = 0; i < count; i++) {
      left[i] = seen[3 * i] - lengthening * moved[3 * i];
    }
    return RobustStats.median(left);
  }

  private static boolean isKnown(Star star) {
    return Double.isFinite(star.xxErrorPx2() + star.xyErrorPx2() + star.yyErrorPx2());
  }

  private void fillSeen(int i, Star star) {
    Moments m = star.moments();
    put(seen, i, m.xxPx2(), m.xyPx2(), m.yyPx2());
    double half = Math.hypot(star.xxErrorPx2(), star.yyErrorPx2()) / 2;
    double floor = Math.hypot(FLOOR_PX2, FLOOR_SHARE * m.meanPx2());
    noise[3 * i] = half;
    noise[3 * i + 1] = half;
    noise[3 * i + 2] = star.xyErrorPx2();
    for (int part = 3 * i; part < 3 * i + 3; part++) {
      error[part] = Math.hypot(floor, noise[part]);
    }
  }

  private void fillMotion(int i, Star star, Camera camera, Motion motion) {
    double square = motion.exposureSeconds() * motion.exposureSeconds() / 12;
    ImageVelocity sky = camera.flow(motion.sky(), star.xPx(), star.yPx());
    ImageVelocity all = camera.flow(motion.stars(), star.xPx(), star.yPx());
    putProduct(trail, i, sky, sky, square);
    putProduct(moved, i, all, all, square);
    double f = camera.focalLengthPx();
    ImageVelocity right = camera.flow(new Spin(0, 1 / f, 0), star.xPx(), star.yPx());
    ImageVelocity down = camera.flow(new Spin(-1 / f, 0, 0), star.xPx(), star.yPx());
    putProduct(shakeX, i, right, right, 1);
    putProduct(shakeY, i, down, down, 1);
    putProduct(shakeXY, i, right, down, 2);
  }

  /** The symmetric part of an outer product, times a factor. */
  private static void putProduct(
      double[] into, int i, ImageVelocity one, ImageVelocity two, double factor) {
    double cross = (one.xPxPerS() * two.yPxPerS() + one.yPxPerS() * two.xPxPerS()) / 2;
    put(
        into,
        i,
        factor * one.xPxPerS() * two.xPxPerS(),
        factor * cross,
        factor * one.yPxPerS() * two.yPxPerS());
  }

  private static void put(double[] into, int i, double xx, double xy, double yy) {
    into[3 * i] = (xx + yy) / 2;
    into[3 * i + 1] = (xx - yy) / 2;
    into[3 * i + 2] = xy;
  }
}
