package rondure.report.picture;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.util.Comparator;
import java.util.List;
import rondure.stars.AverageStar;

/** The row of average stars under a focus curve, each under its position, all at one scale. */
final class FocusStamps {
  /** Of the row with the words under it. */
  static final double HEIGHT = 90;

  private static final double LARGEST = 58;
  private static final double LEAST = 22;
  private static final double LINE = 11.5;
  private static final double WORDS_FROM = 40;
  private static final int PICTURE_SIDE = 96;
  private static final double[] HALF_SIDES_PX = {5, 8, 12, 20, 32};

  private FocusStamps() {}

  /** Of repeated frames, and of those too close, the first. */
  static void draw(Graphics2D graphics, FocusPlot plot, List<FocusChart.Point> points) {
    double top = plot.area().getMaxY() + 36;
    double room = plot.x(plot.least() + 1) - plot.x(plot.least());
    double side = Math.max(LEAST, Math.min(LARGEST, 0.92 * room));
    double half = halfSidePx(points);
    double free = Double.NEGATIVE_INFINITY;
    graphics.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_NEAREST_NEIGHBOR);
    for (FocusChart.Point point : inOrder(points)) {
      double x = plot.x(point.position());
      if (point.star().isPresent() && x - Math.max(side, WORDS_FROM) / 2 >= free) {
        AffineTransform place = AffineTransform.getTranslateInstance(x - side / 2, top);
        place.scale(side / PICTURE_SIDE, side / PICTURE_SIDE);
        graphics.drawImage(picture(point, half), place, null);
        drawLines(graphics, plot, point, top + side);
        free = x + Math.max(side, WORDS_FROM) / 2;
      }
    }
  }

  private static List<FocusChart.Point> inOrder(List<FocusChart.Point> points) {
    return points.stream().sorted(Comparator.comparingDouble(FocusChart.Point::position)).toList();
  }

  private static BufferedImage picture(FocusChart.Point point, double half) {
    AverageStar star = point.star().orElseThrow();
    return StarTones.image(star, point.orientation(), half, PICTURE_SIDE);
  }

  private static void drawLines(
      Graphics2D graphics, FocusPlot plot, FocusChart.Point point, double below) {
    graphics.setFont(point.best() ? ReportFonts.bold(9.5f) : ReportFonts.sans(9.5f));
    graphics.setColor(point.best() ? Palette.SHARP : Palette.INK);
    for (int i = 0; i < point.lines().size(); i++) {
      double base = below + LINE * (i + 1);
      plot.drawAbout(graphics, point.lines().get(i), plot.x(point.position()), base);
    }
  }

  /** Three r.m.s. widths of the softest frame, but no more than the stamps can show. */
  private static double halfSidePx(List<FocusChart.Point> points) {
    double widest =
        Math.sqrt(points.stream().mapToDouble(FocusChart.Point::px2).max().orElseThrow());
    for (double half : HALF_SIDES_PX) {
      if (half >= 3 * widest) {
        return half;
      }
    }
    return HALF_SIDES_PX[HALF_SIDES_PX.length - 1];
  }
}
