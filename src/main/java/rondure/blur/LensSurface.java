package rondure.blur;

import java.util.Objects;
import rondure.base.Moments;

/**
 * What a lens does over the field, the same in every frame: how its disc of defocus and its coma
 * grow away from the image centre.
 *
 * <p>The signed diameters of the disc, along the radius (tangential focus) and across it (sagittal
 * focus), are d + tilt · (x, y) + curvature r² ± astigmatism r² / 2, with x, y and r in half
 * diagonals of the frame from its centre and d the frame's own. A disc of diameter D adds D²/16 per
 * axis. Coma adds three times as much along the radius as across it, Seidel's growing with r² (Born
 * &amp; Wolf, Principles of Optics, ch. 5, from memory), that of higher order with r⁴. Given for
 * the widest aperture of the scene: discs go with 1/N, coma's moments with 1/N⁴.
 *
 * @param tiltRightPx growth of the disc to the right, px over half a diagonal
 * @param tiltDownPx the same downwards
 * @param curvaturePx growth of the disc from the centre to a corner
 * @param astigmatismPx disc along minus across the radius in a corner
 * @param comaPx2 square of the coma coefficient in a corner: adds half of it along the radius and a
 *     sixth across
 * @param comaGrowth how it grows towards it
 */
public record LensSurface(
    double tiltRightPx,
    double tiltDownPx,
    double curvaturePx,
    double astigmatismPx,
    double comaPx2,
    ComaGrowth comaGrowth) {

  public LensSurface {
    Objects.requireNonNull(comaGrowth, "comaGrowth");
  }

  /** With Seidel's coma. */
  public LensSurface(
      double tiltRightPx,
      double tiltDownPx,
      double curvaturePx,
      double astigmatismPx,
      double comaPx2) {
    this(tiltRightPx, tiltDownPx, curvaturePx, astigmatismPx, comaPx2, ComaGrowth.SEIDEL);
  }

  /** A lens that images alike everywhere. */
  public static final LensSurface FLAT = new LensSurface(0, 0, 0, 0, 0);

  /** Mean of r² over a rectangle whose corners are at 1. */
  static final double MEAN_SQUARE_RADIUS = 1 / 3.0;

  /**
   * What becomes of a point at a place, by rays.
   *
   * @param alongPx signed diameter of the disc away from the image centre
   * @param acrossPx the same around it
   * @param comaPx coefficient of coma: its tail is three times as long
   * @param angleRad direction away from the image centre, from right towards down
   */
  public record Spot(double alongPx, double acrossPx, double comaPx, double angleRad) {}

  /**
   * The rays' figure at a place; the parameters are those of {@link #at}.
   *
   * @param x from the image centre to the right, half diagonals
   * @param y down
   */
  public Spot spot(double x, double y, double centreDiscPx, double stop) {
    double square = x * x + y * y;
    double disc = discPx(x, y, centreDiscPx, stop);
    double split = stop * astigmatismPx * square / 2;
    double coma = Math.sqrt(Math.max(0, comaPx2(square, stop)));
    return new Spot(disc + split, disc - split, coma, Math.atan2(y, x));
  }

  /** The signed disc in the centre with which the field's mean is 0: focus at its best. */
  public double bestCentreDiscPx(double stop) {
    return -meanDiscPx(0, stop);
  }

  /**
   * The field's mean signed disc for a frame whose disc in the centre is {@code centreDiscPx}: what
   * refocusing would cure.
   *
   * @param stop f-number of the widest aperture over this frame's
   */
  double meanDiscPx(double centreDiscPx, double stop) {
    return centreDiscPx + stop * curvaturePx * MEAN_SQUARE_RADIUS;
  }

  /**
   * Second moments of disc and coma at a place.
   *
   * @param x from the image centre to the right, half diagonals
   * @param y down
   * @param centreDiscPx signed disc of the frame in the image centre
   * @param stop f-number of the widest aperture over this frame's
   */
  public Moments at(double x, double y, double centreDiscPx, double stop) {
    double square = x * x + y * y;
    double disc = discPx(x, y, centreDiscPx, stop);
    double split = stop * astigmatismPx * square / 2;
    double coma = comaPx2(square, stop);
    double along = (disc + split) * (disc + split) / 16 + coma / 2;
    double across = (disc - split) * (disc - split) / 16 + coma / 6;
    return Moments.ofAxes(along, across, Math.atan2(y, x));
  }

  /** The discs alone at a place, see {@link #at}. */
  StarBlur.Disc discAt(double x, double y, double centreDiscPx, double stop) {
    double disc = discPx(x, y, centreDiscPx, stop);
    double split = stop * astigmatismPx * (x * x + y * y) / 2;
    return new StarBlur.Disc(Math.abs(disc + split), Math.abs(disc - split), Math.atan2(y, x));
  }

  /** Coma alone at a place, see {@link #at}. */
  Moments comaAt(double x, double y, double stop) {
    double coma = Math.max(0, comaPx2(x * x + y * y, stop));
    return Moments.ofAxes(coma / 2, coma / 6, Math.atan2(y, x));
  }

  /** Their mean over the two axes. */
  double roundPx2(double x, double y, double centreDiscPx, double stop) {
    double square = x * x + y * y;
    double disc = discPx(x, y, centreDiscPx, stop);
    double split = stop * astigmatismPx * square / 2;
    return (disc * disc + split * split) / 16 + comaPx2(square, stop) / 3;
  }

  /**
   * Skewness ⟨r² x⟩ / ⟨r²⟩ that coma gives a star, px outwards: the third moment is a third of the
   * cube of its coefficient.
   *
   * @param radius from the image centre, half diagonals
   * @param evenPx2 second moment of all else in the star, mean of both axes
   */
  double comaSkewPx(double radius, double stop, double evenPx2) {
    double coma = Math.max(0, comaPx2(radius * radius, stop));
    double whole = 2 * Math.max(0, evenPx2) + 2 * coma / 3;
    return whole > 0 ? Math.pow(coma, 1.5) / 3 / whole : 0;
  }

  private double discPx(double x, double y, double centreDiscPx, double stop) {
    double square = x * x + y * y;
    return centreDiscPx + stop * (tiltRightPx * x + tiltDownPx * y + curvaturePx * square);
  }

  private double comaPx2(double square, double stop) {
    return stop * stop * stop * stop * comaPx2 * comaGrowth.at(square);
  }
}
