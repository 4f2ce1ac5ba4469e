package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Optional;
import rondure.base.Orientation;
import rondure.night.FocusSeries.Curve;
import rondure.stars.AverageStar;

/**
 * A focus curve: second moment against the position of the focus, the parabola, its minimum with
 * twice its error as a band, the way back to it, and an average star under each position.
 *
 * @param points in time order
 * @param curve the parabola, where there is one
 * @param labels what is written into it
 */
public record FocusChart(List<Point> points, Optional<Curve> curve, Labels labels)
    implements Picture {
  private static final int SAMPLES = 120;
  private static final double RING = 11;
  private static final double DOT = 11;

  /**
   * One frame.
   *
   * @param position of the focus
   * @param px2 second moment
   * @param errorPx2 standard error
   * @param best whether it is the frame nearest to best focus
   * @param star its average star, where there is one
   * @param orientation how the frame is shown
   * @param lines what stands under the star
   */
  public record Point(
      double position,
      double px2,
      double errorPx2,
      boolean best,
      Optional<AverageStar> star,
      Orientation orientation,
      List<String> lines) {
    public Point {
      lines = List.copyOf(lines);
    }
  }

  /**
   * Words in the chart.
   *
   * @param position what runs along, with its unit
   * @param moment what runs up, with its unit
   * @param best the frame nearest to best focus
   * @param minimum where best focus is
   * @param back how far to turn back from the last frame, where that helps
   */
  public record Labels(
      String position, String moment, String best, String minimum, Optional<String> back) {}

  public FocusChart {
    points = List.copyOf(points);
    if (points.isEmpty()) {
      throw new IllegalArgumentException("a focus chart needs a point");
    }
  }

  @Override
  public void draw(Graphics2D graphics, double width, double height) {
    FocusPlot plot = FocusPlot.of(points, width, height);
    curve.ifPresent(parabola -> FocusGuides.drawBand(graphics, plot, parabola, labels));
    plot.drawAxes(graphics, labels);
    curve.ifPresent(parabola -> drawCurve(graphics, plot, parabola));
    points.forEach(point -> drawPoint(graphics, plot, point));
    double last = points.get(points.size() - 1).position();
    curve.ifPresent(parabola -> FocusGuides.drawWay(graphics, plot, last, parabola.at(), labels));
    FocusStamps.draw(graphics, plot, points);
  }

  private void drawCurve(Graphics2D graphics, FocusPlot plot, Curve parabola) {
    Path2D line = new Path2D.Double();
    for (int i = 0; i <= SAMPLES; i++) {
      double position = plot.least() + i * (plot.most() - plot.least()) / SAMPLES;
      double x = plot.x(position);
      double y = plot.y(parabola.px2At(position));
      if (i == 0) {
        line.moveTo(x, y);
      } else {
        line.lineTo(x, y);
      }
    }
    var clip = graphics.getClip();
    graphics.clip(plot.area());
    graphics.setColor(Palette.INK);
    graphics.setStroke(new BasicStroke(1f));
    graphics.draw(line);
    graphics.setClip(clip);
  }

  /** The best frame has another sign and its name. */
  private void drawPoint(Graphics2D graphics, FocusPlot plot, Point point) {
    double x = plot.x(point.position());
    double y = plot.y(point.px2());
    graphics.setColor(Palette.MUTED);
    graphics.setStroke(new BasicStroke(0.8f));
    double high = plot.y(point.px2() + point.errorPx2());
    double low = plot.y(point.px2() - point.errorPx2());
    if (low - high > RING) {
      graphics.draw(new Line2D.Double(x, high, x, y - RING / 2));
      graphics.draw(new Line2D.Double(x, y + RING / 2, x, low));
      graphics.draw(new Line2D.Double(x - 3, high, x + 3, high));
      graphics.draw(new Line2D.Double(x - 3, low, x + 3, low));
    }
    if (point.best()) {
      Mark.NONE.draw(graphics, x, y, DOT / 0.68);
      drawName(graphics, plot, x, y);
    } else {
      Mark.FOCUS.draw(graphics, x, y, RING / 0.88);
    }
  }

  /** Between the arms of the curve, as low as they leave room. */
  private void drawName(Graphics2D graphics, FocusPlot plot, double x, double y) {
    graphics.setFont(ReportFonts.bold(10));
    double half = graphics.getFontMetrics().stringWidth(labels.best()) / 2.0 + 8;
    double base = y - DOT;
    for (double side : new double[] {x - half, x + half}) {
      double position = plot.position(side);
      double arm = curve.map(c -> plot.y(c.px2At(position))).orElse(base);
      base = Math.min(base, arm - DOT);
    }
    base = Math.max(base, plot.area().getMinY() + 12);
    graphics.setColor(Palette.SHARP);
    graphics.setStroke(new BasicStroke(0.6f));
    if (y - DOT > base + 3) {
      graphics.draw(new Line2D.Double(x, base + 3, x, y - DOT / 2));
    }
    Rectangle2D paper = new Rectangle2D.Double(x - half + 6, base - 10, 2 * half - 12, 12.5);
    graphics.setColor(Palette.PAPER);
    graphics.fill(paper.createIntersection(plot.area()));
    graphics.setColor(Palette.SHARP);
    plot.drawAbout(graphics, labels.best(), x, base);
  }
}
