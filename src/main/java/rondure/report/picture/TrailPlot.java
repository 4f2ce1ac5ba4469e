package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Optional;

/**
 * The field of a chart of trails: places of exposures and trails, its axes.
 *
 * @param area where lines are drawn
 * @param mostSeconds exposure at its right; 0 at its left
 * @param mostPx trail at its top; 0 at its bottom
 * @param marks exposures marked under it
 */
record TrailPlot(Rectangle2D area, double mostSeconds, double mostPx, TrailMarks marks) {
  static final double LEFT = 34;
  static final double TOP = 38;
  static final double AXIS_ROOM = 17;

  /** Twice the star's own width: lines cross it halfway up. */
  private static final double WIDTHS_UP = 2;

  /** Crossings later than so many times the first would push the others together. */
  private static final double LATEST_CROSSING = 6;

  private static final double BEYOND_LAST = 1.08;
  private static final double TICKS_APART = 44;

  static TrailPlot of(TrailChart chart, double width, double height) {
    double right = TextMeasure.width(ReportFonts.sans(TrailChart.FONT_SIZE), chart.words().along());
    for (TrailChart.Aim aim : chart.aims()) {
      right = Math.max(right, TextMeasure.width(TrailLabels.font(aim), chart.endName(aim)));
    }
    double plot = width - LEFT - right - TrailLabels.END_GAP;
    double seconds = mostSeconds(chart.aims(), chart.width().px());
    TrailMarks marks = TrailMarks.of(chart.exposures(), plot, width - LEFT, seconds);
    double bottom = height - AXIS_ROOM - marks.height();
    return new TrailPlot(
        new Rectangle2D.Double(LEFT, TOP, plot, bottom - TOP),
        seconds,
        WIDTHS_UP * chart.width().px(),
        marks);
  }

  /** A little beyond the last crossing that can be shown beside the first. */
  static double mostSeconds(List<TrailChart.Aim> aims, double widthPx) {
    double[] crossings =
        aims.stream()
            .flatMap(aim -> aim.rate().secondsFor(widthPx).stream())
            .mapToDouble(Double::doubleValue)
            .sorted()
            .toArray();
    double last = crossings.length == 0 ? 1 : crossings[0];
    for (double crossing : crossings) {
      last = crossing <= LATEST_CROSSING * crossings[0] ? crossing : last;
    }
    return BEYOND_LAST * last;
  }

  double x(double seconds) {
    return area.getMinX() + seconds / mostSeconds * area.getWidth();
  }

  double y(double px) {
    return area.getMaxY() - px / mostPx * area.getHeight();
  }

  Point2D origin() {
    return new Point2D.Double(x(0), y(0));
  }

  /** Where a line leaves the field: at its top, or at its right. */
  Point2D end(TrailChart.Aim aim) {
    double seconds = Math.min(mostSeconds, aim.rate().secondsFor(mostPx).orElse(mostSeconds));
    return new Point2D.Double(x(seconds), y(aim.rate().trailPx(seconds)));
  }

  /** Where the trail is as long as the star is wide, as far as the field shows it. */
  Optional<Point2D> crossing(TrailChart.Aim aim, double widthPx) {
    return aim.rate()
        .secondsFor(widthPx)
        .filter(seconds -> seconds <= mostSeconds)
        .map(seconds -> new Point2D.Double(x(seconds), y(widthPx)));
  }

  /** Trails that the star itself hides. */
  void drawBand(Graphics2D graphics, double widthPx) {
    double top = y(widthPx);
    graphics.setColor(Palette.GROUND);
    graphics.fill(
        new Rectangle2D.Double(area.getMinX(), top, area.getWidth(), area.getMaxY() - top));
  }

  void drawAxes(Graphics2D graphics, TrailChart.Words words) {
    graphics.setFont(ReportFonts.sans(TrailChart.FONT_SIZE));
    graphics.setStroke(new BasicStroke(0.6f));
    graphics.setColor(Palette.MUTED);
    double left = area.getMinX();
    double bottom = area.getMaxY();
    graphics.draw(new Line2D.Double(left, area.getMinY(), left, bottom));
    graphics.draw(new Line2D.Double(left, bottom, area.getMaxX(), bottom));
    for (NiceTicks.Tick tick : NiceTicks.of(0, mostPx, (int) (area.getHeight() / TICKS_APART))) {
      double y = y(tick.value());
      graphics.draw(new Line2D.Double(left - 3, y, left, y));
      double wide = TextMeasure.width(graphics.getFont(), tick.words());
      graphics.drawString(tick.words(), (float) (left - 6 - wide), (float) y + 3.5f);
    }
    for (NiceTicks.Tick tick :
        NiceTicks.of(0, mostSeconds, (int) (area.getWidth() / TICKS_APART))) {
      double x = x(tick.value());
      graphics.draw(new Line2D.Double(x, bottom, x, bottom + 3));
      double wide = TextMeasure.width(graphics.getFont(), tick.words());
      if (x + wide / 2 <= area.getMaxX() && !marks.runsThrough(x - left, wide)) {
        graphics.drawString(tick.words(), (float) (x - wide / 2), (float) bottom + 13);
      }
    }
    double end = area.getMaxX() + TrailLabels.END_GAP;
    graphics.drawString(words.along(), (float) end, (float) bottom + 13);
    graphics.drawString(words.up(), 0f, 10f);
  }
}
