package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Locale;

/**
 * The field of a focus curve: places of positions and second moments, axes, words that stay inside.
 *
 * @param area where points are drawn
 * @param least position at its left
 * @param most position at its right
 * @param highestPx2 second moment at its top; 0 at its bottom
 * @param width of the whole picture
 */
record FocusPlot(Rectangle2D area, double least, double most, double highestPx2, double width) {
  private static final double LEFT = 34;
  private static final double TOP = 46;
  private static final double AXIS_WORDS = 34;
  private static final double TICK = 3;
  private static final int TICKS_UP = 5;
  private static final int TICKS_ALONG = 14;

  /** With room for all points. */
  static FocusPlot of(List<FocusChart.Point> points, double width, double height) {
    double least = points.stream().mapToDouble(FocusChart.Point::position).min().orElseThrow();
    double most = points.stream().mapToDouble(FocusChart.Point::position).max().orElseThrow();
    double margin = Math.max(0.5, 0.06 * (most - least));
    double highest = points.stream().mapToDouble(p -> p.px2() + p.errorPx2()).max().orElseThrow();
    double bottom = height - FocusStamps.HEIGHT - AXIS_WORDS;
    return new FocusPlot(
        new Rectangle2D.Double(LEFT, TOP, width - LEFT - 1, bottom - TOP),
        least - margin,
        most + margin,
        1.06 * highest,
        width);
  }

  double x(double position) {
    return area.getMinX() + (position - least) / (most - least) * area.getWidth();
  }

  /** The position that is drawn at a place along the picture. */
  double position(double x) {
    return least + (x - area.getMinX()) / area.getWidth() * (most - least);
  }

  double y(double px2) {
    return area.getMaxY() - px2 / highestPx2 * area.getHeight();
  }

  /** The least of 1, 2 and 5 times a power of ten with which there are at most so many ticks. */
  static double step(double span, int ticks) {
    double power = Math.pow(10, Math.floor(Math.log10(span / ticks)));
    for (double times : new double[] {1, 2, 5}) {
      if (span / (times * power) <= ticks) {
        return times * power;
      }
    }
    return 10 * power;
  }

  void drawAxes(Graphics2D graphics, FocusChart.Labels labels) {
    graphics.setFont(ReportFonts.sans(9.5f));
    double up = step(highestPx2, TICKS_UP);
    for (int i = 0; i * up <= highestPx2; i++) {
      double y = y(i * up);
      graphics.setColor(Palette.HAIRLINE);
      graphics.setStroke(new BasicStroke(i == 0 ? 0.8f : 0.5f));
      graphics.draw(new Line2D.Double(area.getMinX(), y, area.getMaxX(), y));
      graphics.setColor(Palette.MUTED);
      String number = number(i * up, up);
      double wide = graphics.getFontMetrics().stringWidth(number);
      graphics.drawString(number, (float) (area.getMinX() - 5 - wide), (float) (y + 3.5));
    }
    double along = Math.max(step(most - least, TICKS_ALONG), 1e-6);
    double tick = most - least >= 2 ? Math.max(1, along) : along;
    for (double at = Math.ceil(least / tick) * tick; at <= most; at += tick) {
      double x = x(at);
      graphics.setColor(Palette.MUTED);
      graphics.draw(new Line2D.Double(x, area.getMaxY(), x, area.getMaxY() + TICK));
      drawAbout(graphics, number(at, tick), x, area.getMaxY() + 13);
    }
    graphics.setFont(ReportFonts.sans(10));
    drawAbout(graphics, labels.position(), area.getCenterX(), area.getMaxY() + 27);
    graphics.drawString(labels.moment(), 0f, 10f);
  }

  private static String number(double value, double step) {
    int decimals = (int) Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
    double rounded = Math.abs(value) < step / 2 ? 0 : value;
    String text = String.format(Locale.ROOT, "%." + decimals + "f", rounded);
    return text.startsWith("-") ? "−" + text.substring(1) : text;
  }

  /** Words about a place, moved inwards where they would leave the picture. */
  void drawAbout(Graphics2D graphics, String words, double x, double base) {
    double wide = graphics.getFontMetrics().stringWidth(words);
    double left = Math.max(0, Math.min(width - wide, x - wide / 2));
    graphics.drawString(words, (float) left, (float) base);
  }
}
