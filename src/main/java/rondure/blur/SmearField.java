package rondure.blur;

import java.util.ArrayList;
import java.util.List;
import rondure.sky.RectilinearCamera;
import rondure.stars.Star;
import rondure.stars.StarField;

/**
 * The spin-2 parts of the stars of a frame in plain arrays, ready for fitting.
 *
 * <p>Index i is a star; {@code along[i]} = (Mxx - Myy)/2 and {@code diagonal[i]} = Mxy, px²; errors
 * are one standard deviation with a floor for what no smooth model of a lens describes.
 */
final class SmearField {
  private static final int MOST_STARS = 150;
  private static final double FLOOR_PX2 = 0.02;
  private static final double FLOOR_SHARE = 0.03;

  /** A focal length so long that the field is flat. */
  static final double NARROW_FOCAL_PX = 1e7;

  final RectilinearCamera camera;
  final double halfDiagonalPx;
  final double[] xs;
  final double[] ys;
  final double[] along;
  final double[] diagonal;
  final double[] alongError;
  final double[] diagonalError;

  private SmearField(RectilinearCamera camera, double halfDiagonalPx, List<Star> stars) {
    this.camera = camera;
    this.halfDiagonalPx = halfDiagonalPx;
    int count = stars.size();
    xs = stars.stream().mapToDouble(Star::xPx).toArray();
    ys = stars.stream().mapToDouble(Star::yPx).toArray();
    along = new double[count];
    diagonal = new double[count];
    alongError = new double[count];
    diagonalError = new double[count];
    for (int i = 0; i < count; i++) {
      Star star = stars.get(i);
      double floor = FLOOR_PX2 + FLOOR_SHARE * Math.abs(star.moments().meanPx2());
      along[i] = (star.moments().xxPx2() - star.moments().yyPx2()) / 2;
      diagonal[i] = star.moments().xyPx2();
      alongError[i] = Math.hypot(floor, Math.hypot(star.xxErrorPx2(), star.yyErrorPx2()) / 2);
      diagonalError[i] = Math.hypot(floor, star.xyErrorPx2());
    }
  }

  private SmearField(RectilinearCamera camera, SmearField same) {
    this.camera = camera;
    halfDiagonalPx = same.halfDiagonalPx;
    xs = same.xs;
    ys = same.ys;
    along = same.along;
    diagonal = same.diagonal;
    alongError = same.alongError;
    diagonalError = same.diagonalError;
  }

  /** The brightest stars of a field; without a focal length the field counts as narrow. */
  static SmearField of(StarField field, double focalLengthPx) {
    List<Star> stars = field.stars();
    List<Star> brightest = new ArrayList<>(stars.subList(0, Math.min(MOST_STARS, stars.size())));
    RectilinearCamera camera =
        RectilinearCamera.centred(focalLengthPx, field.widthPx(), field.heightPx());
    return new SmearField(
        camera, Math.hypot(field.widthPx(), field.heightPx()) / 2, List.copyOf(brightest));
  }

  /** The same stars with another focal length. */
  SmearField seenThrough(double focalLengthPx) {
    return new SmearField(
        new RectilinearCamera(focalLengthPx, camera.centreXPx(), camera.centreYPx()), this);
  }

  int count() {
    return xs.length;
  }

  /** Radial spin-2 of unit strength at the corner, growing as the given power of the radius. */
  double[] radial(int i, int power) {
    double dx = xs[i] - camera.centreXPx();
    double dy = ys[i] - camera.centreYPx();
    double radius = Math.max(1e-9, Math.hypot(dx, dy));
    double strength = Math.pow(radius / halfDiagonalPx, power);
    return new double[] {
      strength * (dx * dx - dy * dy) / (radius * radius), strength * 2 * dx * dy / (radius * radius)
    };
  }
}
