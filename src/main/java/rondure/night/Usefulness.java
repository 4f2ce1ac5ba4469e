package rondure.night;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import rondure.base.Moments;
import rondure.base.Orientation;
import rondure.base.RobustStats;
import rondure.stars.Star;
import rondure.stars.StarField;

/**
 * How large a frame may be shown before its stars stop being points.
 *
 * @param largestUse the most demanding use that it serves
 * @param pointUpToWidthPx width of the displayed picture, at most its own, up to which stars are
 *     points over the wanted share of the sky's area
 * @param leastWidthPx width of the displayed picture at the smallest use: stars that are points
 *     only in narrower ones serve none
 */
public record Usefulness(OutputUse largestUse, double pointUpToWidthPx, double leastWidthPx) {
  /** Points of the sky that are asked along the longer side of the frame. */
  private static final int POINTS_ALONG = 16;

  /** A picture too small to fill the web's size still serves a page at half its own. */
  private static final double WEB_SHARE_OF_SMALL = 0.5;

  /** Stars around a point whose median is its star: noise of one in three of the single star's. */
  private static final int NEIGHBOURS = 9;

  /**
   * Of a frame.
   *
   * @throws IllegalArgumentException when the field has no measured star
   */
  public static Usefulness of(StarField field, Orientation orientation, UseSettings settings) {
    if (field.stars().isEmpty()) {
      throw new IllegalArgumentException("a field without measured stars serves no use");
    }
    double scale = scale(field, settings);
    int widthPx = orientation.displayWidthPx(field.widthPx(), field.heightPx());
    int longSidePx = Math.max(field.widthPx(), field.heightPx());
    double leastPx = webPx(longSidePx, settings) * widthPx / longSidePx;
    return new Usefulness(use(scale, longSidePx, settings), scale * widthPx, leastPx);
  }

  /**
   * The same, of a picture that was made smaller or cropped: at its own full size it is not what
   * the camera took, so that serves a screen or a page only.
   *
   * @param longSidePx its longer side
   */
  Usefulness ofSmallerCopy(double longSidePx, UseSettings settings) {
    boolean screen = longSidePx >= settings.screenLongSidePx();
    return largestUse == OutputUse.FULL_SIZE
        ? new Usefulness(
            screen ? OutputUse.SCREEN_4K : OutputUse.WEB, pointUpToWidthPx, leastWidthPx)
        : this;
  }

  private static OutputUse use(double scale, int longSidePx, UseSettings settings) {
    if (scale >= 1) {
      return OutputUse.FULL_SIZE;
    }
    double points = scale * longSidePx;
    if (points >= settings.screenLongSidePx()) {
      return OutputUse.SCREEN_4K;
    }
    return points >= webPx(longSidePx, settings) ? OutputUse.WEB : OutputUse.NONE;
  }

  private static double webPx(int longSidePx, UseSettings settings) {
    return Math.min(settings.webLongSidePx(), WEB_SHARE_OF_SMALL * longSidePx);
  }

  /** Largest factor at which the wanted share of the sky has points. */
  private static double scale(StarField field, UseSettings settings) {
    List<Moments> tensors = field.stars().stream().map(Usefulness::halfMaximum).toList();
    List<Double> scales = new ArrayList<>();
    double step = Math.max(field.widthPx(), field.heightPx()) / (double) POINTS_ALONG;
    for (double y = step / 2; y < field.heightPx(); y += step) {
      for (double x = step / 2; x < field.widthPx(); x += step) {
        if (field.mask().isSky(x, y)) {
          scales.add(PointScale.largest(local(field.stars(), tensors, x, y), settings));
        }
      }
    }
    if (scales.isEmpty()) {
      scales.add(PointScale.largest(median(tensors), settings));
    }
    scales.sort(Comparator.reverseOrder());
    int place = (int) Math.ceil(settings.pointSkyShare() * scales.size()) - 1;
    return scales.get(Math.max(0, place));
  }

  /** Median tensor of the stars nearest to a point. */
  private static Moments local(List<Star> stars, List<Moments> tensors, double x, double y) {
    return median(Arrays.stream(nearest(stars, x, y)).mapToObj(tensors::get).toList());
  }

  /** The stars nearest to a point, by insertion among those found so far. */
  private static int[] nearest(List<Star> stars, double x, double y) {
    int wanted = Math.min(NEIGHBOURS, stars.size());
    int[] nearest = new int[wanted];
    double[] squares = new double[wanted];
    Arrays.fill(squares, Double.POSITIVE_INFINITY);
    for (int i = 0; i < stars.size(); i++) {
      double square = squarePx2(stars.get(i), x, y);
      int place = wanted;
      while (place > 0 && square < squares[place - 1]) {
        place--;
      }
      if (place < wanted) {
        System.arraycopy(nearest, place, nearest, place + 1, wanted - 1 - place);
        System.arraycopy(squares, place, squares, place + 1, wanted - 1 - place);
        nearest[place] = i;
        squares[place] = square;
      }
    }
    return nearest;
  }

  private static double squarePx2(Star star, double x, double y) {
    double dx = star.xPx() - x;
    double dy = star.yPx() - y;
    return dx * dx + dy * dy;
  }

  private static Moments median(List<Moments> tensors) {
    return new Moments(
        RobustStats.median(tensors.stream().mapToDouble(Moments::xxPx2).toArray()),
        RobustStats.median(tensors.stream().mapToDouble(Moments::xyPx2).toArray()),
        RobustStats.median(tensors.stream().mapToDouble(Moments::yyPx2).toArray()));
  }

  private static Moments halfMaximum(Star star) {
    double major = star.fwhmMajorPx() / Moments.FWHM_PER_SIGMA;
    double minor = star.fwhmMinorPx() / Moments.FWHM_PER_SIGMA;
    return Moments.ofAxes(major * major, minor * minor, star.moments().positionAngleRad());
  }
}
