package rondure.blur;

import java.util.List;
import java.util.function.IntUnaryOperator;
import java.util.stream.IntStream;
import rondure.base.Moments;
import rondure.base.RobustStats;
import rondure.stars.Star;

/**
 * The tensors of one frame's stars in plain arrays, laid out as in {@link FieldPlaces}. Errors are
 * one standard deviation with a floor for what no smooth model describes.
 */
final class FrameStars {
  private static final int MOST_STARS = 400;
  private static final double FLOOR_PX2 = 0.015;
  private static final double FLOOR_SHARE = 0.025;
  private static final double WIDEST = 0.9;

  /** That of a Moffat profile of exponent 3 in the window of a fit. */
  private static final double MOST_PEAKED = 0.45;

  /** Of stars that are not known in other frames. */
  static final int NO_TRACK = -1;

  final int count;

  /** Which star of the scene each is. */
  final int[] tracks;

  final FieldPlaces places;
  final double[] seen;
  final double[] error;

  /** Measuring errors alone. */
  final double[] noise;

  /** Third-moment vectors, see {@link Star}: away from the image centre, and across that. */
  final double[] skewOutPx;

  final double[] skewAcrossPx;

  /**
   * Second moment of the Gaussian of a star's half-maximum widths over its own, where that is less,
   * median over the frame: below 1 where profiles have wings. Of single stars it would tell which
   * came out too wide.
   */
  final double peaked;

  private final double halfWidth;

  private FrameStars(List<Star> stars, int[] tracks, View view, FieldPlaces.Motion motion) {
    count = stars.size();
    this.tracks = tracks;
    halfWidth = view.widthPx() / 2.0 / view.halfDiagonalPx();
    places =
        new FieldPlaces(
            stars.stream().mapToDouble(Star::xPx).toArray(),
            stars.stream().mapToDouble(Star::yPx).toArray(),
            view,
            motion);
    seen = new double[3 * count];
    error = new double[3 * count];
    noise = new double[3 * count];
    skewOutPx = new double[count];
    skewAcrossPx = new double[count];
    for (int i = 0; i < count; i++) {
      fillSeen(i, stars.get(i));
    }
    double[] shares = stars.stream().mapToDouble(FrameStars::peaked).toArray();
    peaked = count == 0 ? 1 : RobustStats.median(shares);
  }

  /**
   * The brightest stars of a frame.
   *
   * @param stars measured, brightest first
   */
  static FrameStars of(List<Star> stars, View view, FieldPlaces.Motion motion) {
    return of(stars, view, motion, i -> NO_TRACK);
  }

  /** The same with which star of the scene each of those measured is. */
  static FrameStars of(
      List<Star> stars, View view, FieldPlaces.Motion motion, IntUnaryOperator trackOf) {
    int[] known =
        IntStream.range(0, stars.size())
            .filter(i -> isKnown(stars.get(i)))
            .filter(i -> view.camera().sees(stars.get(i).xPx(), stars.get(i).yPx()))
            .limit(MOST_STARS)
            .toArray();
    List<Star> kept = IntStream.of(known).mapToObj(stars::get).toList();
    return new FrameStars(kept, IntStream.of(known).map(trackOf).toArray(), view, motion);
  }

  private static boolean isKnown(Star star) {
    return Double.isFinite(star.xxErrorPx2() + star.xyErrorPx2() + star.yyErrorPx2());
  }

  private void fillSeen(int i, Star star) {
    Moments m = star.moments();
    FieldPlaces.put(seen, i, m.xxPx2(), m.xyPx2(), m.yyPx2());
    double angle = Math.atan2(places.y[i], places.x[i]);
    double right = Math.cos(angle);
    double down = Math.sin(angle);
    skewOutPx[i] = star.skewXPx() * right + star.skewYPx() * down;
    skewAcrossPx[i] = star.skewYPx() * right - star.skewXPx() * down;
    double half = Math.hypot(star.xxErrorPx2(), star.yyErrorPx2()) / 2;
    double floor = Math.hypot(FLOOR_PX2, FLOOR_SHARE * m.meanPx2());
    noise[3 * i] = half;
    noise[3 * i + 1] = half;
    noise[3 * i + 2] = star.xyErrorPx2();
    for (int part = 3 * i; part < 3 * i + 3; part++) {
      error[part] = Math.hypot(floor, noise[part]);
    }
  }

  private static double peaked(Star star) {
    double square = Moments.FWHM_PER_SIGMA * Moments.FWHM_PER_SIGMA;
    double gaussian = star.fwhmMajorPx() * star.fwhmMinorPx() / square;
    double own = Math.sqrt(star.moments().majorPx2() * star.moments().minorPx2());
    return own > 0 ? Math.max(MOST_PEAKED, Math.min(1, gaussian / own)) : 1;
  }

  /**
   * The cell of each star in a grid over the frame, row by row.
   *
   * @param along cells along the long side
   * @param across cells along the short side
   */
  int[] cells(int along, int across) {
    double halfHeight = Math.sqrt(1 - halfWidth * halfWidth);
    boolean upright = halfHeight > halfWidth;
    int columns = upright ? across : along;
    int rows = upright ? along : across;
    int[] cells = new int[count];
    for (int i = 0; i < count; i++) {
      int column = (int) Math.floor(columns * (places.x[i] / halfWidth + 1) / 2);
      int row = (int) Math.floor(rows * (places.y[i] / halfHeight + 1) / 2);
      cells[i] =
          Math.max(0, Math.min(rows - 1, row)) * columns
              + Math.max(0, Math.min(columns - 1, column));
    }
    return cells;
  }

  /** Median over the stars of the round part that steady motion leaves. */
  double stillRoundPx2(double lengthening) {
    return RobustStats.median(still(lengthening));
  }

  /** The same of the widest tenth. */
  double widestStillPx2(double lengthening) {
    return RobustStats.percentile(WIDEST, still(lengthening));
  }

  /** The same of the narrowest tenth. */
  double narrowestStillPx2(double lengthening) {
    return RobustStats.percentile(1 - WIDEST, still(lengthening));
  }

  private double[] still(double lengthening) {
    double[] left = new double[count];
    for (int i = 0; i < count; i++) {
      left[i] = seen[3 * i] - lengthening * places.moved[3 * i];
    }
    return left;
  }
}
