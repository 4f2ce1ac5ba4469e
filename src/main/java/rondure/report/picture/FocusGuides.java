package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import rondure.night.FocusSeries.Curve;

/** What a focus curve tells one to do: where best focus is, and the way back to it. */
final class FocusGuides {
  private static final double ARROW = 5;

  /** How far above the axis the way back is drawn. */
  private static final double ARROW_LEVEL = 16;

  private FocusGuides() {}

  /** Best focus, and where it may lie. */
  static void drawBand(
      Graphics2D graphics, FocusPlot plot, Curve parabola, FocusChart.Labels labels) {
    double left = plot.x(parabola.at() - 2 * parabola.atError());
    double right = plot.x(parabola.at() + 2 * parabola.atError());
    Rectangle2D area = plot.area();
    Rectangle2D band = new Rectangle2D.Double(left, area.getMinY(), right - left, area.getHeight());
    graphics.setColor(Palette.GROUND);
    graphics.fill(band.createIntersection(area));
    double middle = plot.x(parabola.at());
    graphics.setColor(Palette.INK);
    graphics.setStroke(
        new BasicStroke(
            0.8f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 4, new float[] {4, 3}, 0));
    graphics.draw(new Line2D.Double(middle, area.getMinY() - 4, middle, area.getMaxY()));
    graphics.setFont(ReportFonts.bold(10));
    plot.drawAbout(graphics, labels.minimum(), middle, area.getMinY() - 8);
  }

  /** An arrow from where the last frame left the focus. */
  static void drawWay(
      Graphics2D graphics, FocusPlot plot, double last, double best, FocusChart.Labels labels) {
    if (labels.back().isEmpty()) {
      return;
    }
    double from = plot.x(last);
    double to = plot.x(best);
    double y = plot.area().getMaxY() - ARROW_LEVEL;
    double back = Math.signum(from - to) * ARROW;
    graphics.setColor(Palette.STRETCHED);
    graphics.setStroke(new BasicStroke(1.2f));
    graphics.draw(new Line2D.Double(from, y, to + back, y));
    graphics.draw(new Line2D.Double(from, y - 4, from, y + 4));
    Path2D head = new Path2D.Double();
    head.moveTo(to, y);
    head.lineTo(to + 1.6 * back, y - ARROW);
    head.lineTo(to + 1.6 * back, y + ARROW);
    head.closePath();
    graphics.fill(head);
    graphics.setFont(ReportFonts.sans(10));
    plot.drawAbout(graphics, labels.back().get(), (from + to) / 2, y - 4);
  }
}
