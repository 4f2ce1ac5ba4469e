package rondure.blur;

import java.util.List;
import rondure.sky.Camera;
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

  final Camera camera;
  final double halfDiagonalPx;

  /** Where the lens is sharpest, from the middle of the frame, px. */
  private final double lensXPx;

  private final double lensYPx;

  final double[] xs;
  final double[] ys;
  final double[] along;
  final double[] diagonal;
  final double[] alongError;
  final double[] diagonalError;

  private SmearField(Camera camera, double halfDiagonalPx, List<Star> stars) {
    this.camera = camera;
    this.halfDiagonalPx = halfDiagonalPx;
    this.lensXPx = 0;
    this.lensYPx = 0;
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

  private SmearField(Camera camera, double lensXPx, double lensYPx, SmearField same) {
    this.camera = camera;
    this.lensXPx = lensXPx;
    this.lensYPx = lensYPx;
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
    List<Star> brightest =
        field.stars().stream().filter(SmearField::isKnown).limit(MOST_STARS).toList();
    Camera camera = Camera.rectilinear(focalLengthPx, field.widthPx(), field.heightPx());
    return new SmearField(camera, Math.hypot(field.widthPx(), field.heightPx()) / 2, brightest);
  }

  private static boolean isKnown(Star star) {
    return Double.isFinite(star.moments().meanPx2() + star.moments().spin2Px2())
        && Double.isFinite(star.xxErrorPx2() + star.xyErrorPx2() + star.yyErrorPx2());
  }

  /** The same stars with another focal length. */
  SmearField seenThrough(double focalLengthPx) {
    return new SmearField(
        new Camera(
            camera.projection(),
            focalLengthPx,
            camera.k1(),
            camera.centreXPx(),
            camera.centreYPx()),
        lensXPx,
        lensYPx,
        this);
  }

  /** The same stars behind a lens whose axis is off the middle (cut picture, decentred lens). */
  SmearField withLensAt(double fromMiddleXPx, double fromMiddleYPx) {
    return new SmearField(camera, fromMiddleXPx, fromMiddleYPx, this);
  }

  int count() {
    return xs.length;
  }

  /** Distance of a star from the lens axis over half the diagonal. */
  double radiusShare(int i) {
    return Math.hypot(lensDx(i), lensDy(i)) / halfDiagonalPx;
  }

  private double lensDx(int i) {
    return xs[i] - camera.centreXPx() - lensXPx;
  }

  private double lensDy(int i) {
    return ys[i] - camera.centreYPx() - lensYPx;
  }

  /** Radial spin-2 of unit strength at half the diagonal, growing as a power of the radius. */
  double[] radial(int i, int power) {
    double dx = lensDx(i);
    double dy = lensDy(i);
    double square = Math.max(1e-9, dx * dx + dy * dy);
    double strength = Math.pow(radiusShare(i), power);
    return new double[] {strength * (dx * dx - dy * dy) / square, strength * 2 * dx * dy / square};
  }
}
