package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jfree.chart.ChartRenderingInfo;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.XYIntervalSeries;
import org.jfree.data.xy.XYIntervalSeriesCollection;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import rondure.base.Orientation;
import rondure.night.FocusSeries.Curve;
import rondure.stars.AverageStar;

/**
 * A focus curve: second moment against the position of the focus, the parabola, its minimum with
 * twice its error as a band, and an average star under each position.
 *
 * @param points in time order
 * @param curve the parabola, where there is one
 * @param positionLabel words and unit under the axis
 * @param momentLabel words and unit at the side
 */
public record FocusChart(
    List<Point> points, Optional<Curve> curve, String positionLabel, String momentLabel)
    implements Picture {
  private static final int SAMPLES = 120;
  private static final double STAMPS = 58;
  private static final double LARGEST_STAMP = 52;
  private static final int PICTURE_SIDE = 96;
  private static final double[] HALF_SIDES_PX = {5, 8, 12, 20, 32};

  /**
   * One frame.
   *
   * @param position of the focus
   * @param px2 second moment
   * @param errorPx2 standard error
   * @param best whether it is the frame nearest to best focus
   * @param star its average star, where there is one
   * @param orientation how the frame is shown
   */
  public record Point(
      double position,
      double px2,
      double errorPx2,
      boolean best,
      Optional<AverageStar> star,
      Orientation orientation) {}

  public FocusChart {
    points = List.copyOf(points);
    if (points.isEmpty()) {
      throw new IllegalArgumentException("a focus chart needs a point");
    }
  }

  @Override
  public void draw(Graphics2D graphics, double width, double height) {
    XYPlot plot = new XYPlot();
    plot.setDomainAxis(positions());
    plot.setRangeAxis(moments());
    plot.setDataset(0, measured());
    plot.setRenderer(0, signs());
    curve.ifPresent(parabola -> addCurve(plot, parabola));
    plot.setBackgroundPaint(null);
    plot.setOutlineVisible(false);
    plot.setRangeGridlinePaint(Palette.GROUND);
    plot.setRangeGridlineStroke(new BasicStroke(0.7f));
    plot.setDomainGridlinesVisible(false);
    JFreeChart chart = new JFreeChart(null, ReportFonts.bold(10), plot, false);
    chart.setBackgroundPaint(null);
    chart.setPadding(new RectangleInsets(4, 0, 0, 4));
    ChartRenderingInfo places = new ChartRenderingInfo();
    chart.draw(graphics, new Rectangle2D.Double(0, 0, width, height - STAMPS), places);
    Rectangle2D area = places.getPlotInfo().getDataArea();
    drawStars(graphics, plot, area, height - STAMPS + 4);
  }

  private double least() {
    return points.stream().mapToDouble(Point::position).min().orElseThrow();
  }

  private double most() {
    return points.stream().mapToDouble(Point::position).max().orElseThrow();
  }

  private double margin() {
    return Math.max(0.5, 0.06 * (most() - least()));
  }

  private NumberAxis positions() {
    NumberAxis axis = new NumberAxis(positionLabel);
    axis.setStandardTickUnits(NumberAxis.createIntegerTickUnits(Locale.ROOT));
    axis.setRange(least() - margin(), most() + margin());
    style(axis);
    return axis;
  }

  private NumberAxis moments() {
    NumberAxis axis = new NumberAxis(momentLabel);
    axis.setStandardTickUnits(NumberAxis.createStandardTickUnits(Locale.ROOT));
    double highest = points.stream().mapToDouble(p -> p.px2() + p.errorPx2()).max().orElseThrow();
    axis.setRange(0, 1.08 * highest);
    style(axis);
    return axis;
  }

  private static void style(NumberAxis axis) {
    axis.setTickLabelFont(ReportFonts.sans(9.5f));
    axis.setTickLabelPaint(Palette.MUTED);
    axis.setAxisLinePaint(Palette.HAIRLINE);
    axis.setTickMarkPaint(Palette.HAIRLINE);
    axis.setLabelFont(ReportFonts.sans(10));
    axis.setLabelPaint(Palette.MUTED);
  }

  /** The best frame is a series of its own: another sign. */
  private XYIntervalSeriesCollection measured() {
    XYIntervalSeries best = new XYIntervalSeries("best");
    XYIntervalSeries others = new XYIntervalSeries("others");
    for (Point point : points) {
      XYIntervalSeries own = point.best() ? best : others;
      double x = point.position();
      own.add(x, x, x, point.px2(), point.px2() - point.errorPx2(), point.px2() + point.errorPx2());
    }
    XYIntervalSeriesCollection data = new XYIntervalSeriesCollection();
    data.addSeries(others);
    data.addSeries(best);
    return data;
  }

  private static XYErrorRenderer signs() {
    XYErrorRenderer renderer = new XYErrorRenderer();
    renderer.setDrawXError(false);
    renderer.setErrorPaint(Palette.MUTED);
    renderer.setErrorStroke(new BasicStroke(0.8f));
    renderer.setSeriesShape(0, Mark.FOCUS.shape(0, 0, 11));
    renderer.setSeriesPaint(0, Mark.FOCUS.colour());
    renderer.setSeriesShape(1, new Ellipse2D.Double(-5, -5, 10, 10));
    renderer.setSeriesPaint(1, Palette.SHARP);
    return renderer;
  }

  private void addCurve(XYPlot plot, Curve parabola) {
    XYSeries line = new XYSeries("curve", false, true);
    double from = least() - margin();
    double step = (most() + margin() - from) / SAMPLES;
    for (int i = 0; i <= SAMPLES; i++) {
      line.add(from + i * step, parabola.px2At(from + i * step));
    }
    XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
    renderer.setSeriesPaint(0, Palette.INK);
    renderer.setSeriesStroke(0, new BasicStroke(1f));
    renderer.setDrawSeriesLineAsPath(true);
    plot.setDataset(1, new XYSeriesCollection(line));
    plot.setRenderer(1, renderer);
    double twice = 2 * parabola.atError();
    IntervalMarker band = new IntervalMarker(parabola.at() - twice, parabola.at() + twice);
    band.setPaint(Palette.GROUND);
    band.setAlpha(1f);
    plot.addDomainMarker(band, Layer.BACKGROUND);
    ValueMarker minimum = new ValueMarker(parabola.at());
    minimum.setPaint(Palette.MUTED);
    minimum.setStroke(
        new BasicStroke(
            1f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 4, new float[] {4, 3}, 0));
    plot.addDomainMarker(minimum, Layer.FOREGROUND);
  }

  /** Of repeated frames, and of those too close, the first. */
  private void drawStars(Graphics2D graphics, XYPlot plot, Rectangle2D area, double top) {
    double room = area.getWidth() / Math.max(1, (most() - least() + 2 * margin()));
    double side = Math.max(22, Math.min(LARGEST_STAMP, 0.92 * room));
    double half = halfSidePx();
    double free = Double.NEGATIVE_INFINITY;
    List<Point> inOrder =
        points.stream().sorted(java.util.Comparator.comparingDouble(Point::position)).toList();
    graphics.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_NEAREST_NEIGHBOR);
    for (Point point : inOrder) {
      double x = plot.getDomainAxis().valueToJava2D(point.position(), area, RectangleEdge.BOTTOM);
      if (point.star().isPresent() && x - side / 2 >= free) {
        BufferedImage image =
            StarTones.image(point.star().get(), point.orientation(), half, PICTURE_SIDE);
        AffineTransform place = AffineTransform.getTranslateInstance(x - side / 2, top);
        place.scale(side / PICTURE_SIDE, side / PICTURE_SIDE);
        graphics.drawImage(image, place, null);
        free = x + side / 2;
      }
    }
  }

  /** Three r.m.s. widths of the softest frame, but no more than the stamps can show. */
  private double halfSidePx() {
    double widest = Math.sqrt(points.stream().mapToDouble(Point::px2).max().orElseThrow());
    for (double half : HALF_SIDES_PX) {
      if (half >= 3 * widest) {
        return half;
      }
    }
    return HALF_SIDES_PX[HALF_SIDES_PX.length - 1];
  }
}
