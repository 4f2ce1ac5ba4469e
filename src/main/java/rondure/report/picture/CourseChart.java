package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.Paint;
import java.awt.Shape;
import java.awt.geom.Rectangle2D;
import java.text.DateFormat;
import java.text.SimpleDateFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TimeZone;
import org.jfree.chart.ChartRenderingInfo;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.DateAxis;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/**
 * Several quantities against time or order, one above another on one axis.
 *
 * @param panels from top to bottom
 * @param axis what runs to the right
 * @param axisLabel words under the axis
 */
public record CourseChart(List<Panel> panels, Axis axis, String axisLabel) implements Picture {
  /** Shorter nights have marks on the axis closer than a minute. */
  private static final double BRIEF_MILLIS = 10 * 60_000;

  /** What runs to the right. */
  public enum Axis {
    /** Milliseconds of the camera's clock, shown as hours and minutes. */
    TIME,
    /** Frame numbers. */
    ORDER
  }

  /**
   * One quantity.
   *
   * @param title words at the top of the panel: quantity, unit, which way is better
   * @param lines one for each scene
   * @param lowest lower end of the axis
   * @param highest upper end of the axis
   */
  public record Panel(String title, List<Line> lines, double lowest, double highest) {
    public Panel {
      lines = List.copyOf(lines);
      if (!(highest > lowest)) {
        throw new IllegalArgumentException("highest must be > lowest, was " + highest);
      }
    }
  }

  /**
   * @param points joined by a thin line, in order
   */
  public record Line(List<Point> points) {
    public Line {
      points = List.copyOf(points);
    }
  }

  /**
   * @param x milliseconds or frame number
   * @param y the value
   * @param mark its sign
   */
  public record Point(double x, double y, Mark mark) {}

  private static final double TITLE_ROOM = 20;

  public CourseChart {
    panels = List.copyOf(panels);
  }

  @Override
  public void draw(Graphics2D graphics, double width, double height) {
    CombinedDomainXYPlot plot = new CombinedDomainXYPlot(domainAxis());
    plot.setGap(TITLE_ROOM + 10);
    plot.setOrientation(PlotOrientation.VERTICAL);
    for (Panel panel : panels) {
      plot.add(plotOf(panel), 1);
    }
    JFreeChart chart = new JFreeChart(null, ReportFonts.bold(10), plot, false);
    chart.setBackgroundPaint(null);
    chart.setPadding(new RectangleInsets(TITLE_ROOM, 0, 0, 4));
    ChartRenderingInfo places = new ChartRenderingInfo();
    chart.draw(graphics, new Rectangle2D.Double(0, 0, width, height), places);
    graphics.setFont(ReportFonts.bold(10.5f));
    graphics.setColor(Palette.INK);
    for (int i = 0; i < panels.size(); i++) {
      Rectangle2D area = places.getPlotInfo().getSubplotInfo(i).getDataArea();
      graphics.drawString(panels.get(i).title(), (float) area.getX(), (float) area.getY() - 8);
    }
  }

  private ValueAxis domainAxis() {
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (Panel panel : panels) {
      for (Line line : panel.lines()) {
        for (Point point : line.points()) {
          least = Math.min(least, point.x());
          most = Math.max(most, point.x());
        }
      }
    }
    double margin = Math.max(axis == Axis.TIME ? 60_000 : 1, 0.02 * (most - least));
    boolean brief = most - least < BRIEF_MILLIS;
    ValueAxis domain = axis == Axis.TIME ? timeAxis(brief ? "HH:mm:ss" : "HH:mm") : orderAxis();
    if (least <= most) {
      domain.setRange(least - margin, most + margin);
    }
    style(domain);
    domain.setLabel(axisLabel);
    domain.setLabelFont(ReportFonts.sans(10));
    domain.setLabelPaint(Palette.MUTED);
    return domain;
  }

  private static ValueAxis timeAxis(String pattern) {
    TimeZone clock = TimeZone.getTimeZone("UTC");
    DateAxis time = new DateAxis(null, clock, Locale.ROOT);
    DateFormat format = new SimpleDateFormat(pattern, Locale.ROOT);
    format.setTimeZone(clock);
    time.setDateFormatOverride(format);
    return time;
  }

  private static ValueAxis orderAxis() {
    NumberAxis order = new NumberAxis(null);
    order.setStandardTickUnits(NumberAxis.createIntegerTickUnits(Locale.ROOT));
    return order;
  }

  private static void style(ValueAxis axis) {
    axis.setTickLabelFont(ReportFonts.sans(9.5f));
    axis.setTickLabelPaint(Palette.MUTED);
    axis.setAxisLinePaint(Palette.HAIRLINE);
    axis.setTickMarkPaint(Palette.HAIRLINE);
  }

  private static XYPlot plotOf(Panel panel) {
    NumberAxis range = new NumberAxis(null);
    style(range);
    range.setStandardTickUnits(NumberAxis.createStandardTickUnits(Locale.ROOT));
    range.setRange(panel.lowest(), panel.highest());
    XYSeriesCollection data = new XYSeriesCollection();
    List<List<Point>> points = new ArrayList<>();
    for (Line line : panel.lines()) {
      XYSeries series = new XYSeries(points.size(), false, true);
      line.points().forEach(point -> series.add(point.x(), point.y()));
      data.addSeries(series);
      points.add(line.points());
    }
    XYPlot plot = new XYPlot(data, null, range, new Signs(points));
    plot.setBackgroundPaint(null);
    plot.setOutlineVisible(false);
    plot.setRangeGridlinePaint(Palette.GROUND);
    plot.setRangeGridlineStroke(new BasicStroke(0.7f));
    plot.setDomainGridlinesVisible(false);
    return plot;
  }

  /** Each point as the sign of its frame. */
  private static final class Signs extends XYLineAndShapeRenderer {
    private static final long serialVersionUID = 1L;
    private final transient List<List<Point>> points;
    private final double size;

    Signs(List<List<Point>> points) {
      super(true, true);
      this.points = points;
      setDefaultShapesFilled(true);
      setDrawOutlines(false);
      setDrawSeriesLineAsPath(true);
      int most = points.stream().mapToInt(List::size).sum();
      size = most > 400 ? 4.5 : most > 120 ? 6 : 8;
    }

    @Override
    public Shape getItemShape(int row, int column) {
      return points.get(row).get(column).mark().shape(0, 0, size);
    }

    @Override
    public Paint getItemPaint(int row, int column) {
      return points.get(row).get(column).mark().colour();
    }

    @Override
    protected void drawFirstPassShape(
        Graphics2D graphics, int pass, int series, int item, Shape line) {
      graphics.setStroke(new BasicStroke(0.8f));
      graphics.setPaint(Palette.HAIRLINE);
      graphics.draw(line);
    }
  }
}
