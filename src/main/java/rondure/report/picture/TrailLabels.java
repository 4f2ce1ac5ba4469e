package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;

/**
 * Names at the ends of the lines of a chart of trails, the exposure beside each dot, and the name
 * of the star's own width; none touches another.
 *
 * @param labels all of them
 */
record TrailLabels(List<Label> labels) {
  static final double END_GAP = 6;
  private static final double HIGH = 12;
  private static final double DESCENT = 2.6;
  private static final double LEADER_ROOM = 12;
  private static final double APART = 8;

  /**
   * @param words what is written
   * @param box where
   * @param leader a hairline from what it names
   * @param isBold whether it names what the night did
   */
  record Label(String words, Rectangle2D box, List<Line2D> leader, boolean isBold) {
    Label {
      leader = List.copyOf(leader);
    }
  }

  static Font font(TrailChart.Aim aim) {
    return font(aim.isOwn());
  }

  private static Font font(boolean isBold) {
    return isBold ? ReportFonts.bold(TrailChart.FONT_SIZE) : ReportFonts.sans(TrailChart.FONT_SIZE);
  }

  static TrailLabels of(TrailChart chart, TrailPlot plot) {
    List<Label> labels = new ArrayList<>();
    labels.addAll(atTop(chart, plot));
    labels.addAll(atRight(chart, plot));
    FreePlaces free = FreePlaces.of(chart, plot);
    labels.add(free.onLine(chart.width().words(), plot.y(chart.width().px())));
    chart.aims().stream()
        .filter(aim -> plot.crossing(aim, chart.width().px()).isPresent())
        .sorted(Comparator.comparing((TrailChart.Aim aim) -> -aim.rate().trailPx(1)))
        .forEach(
            aim ->
                labels.add(free.beside(plot.crossing(aim, chart.width().px()).orElseThrow(), aim)));
    labels.add(free.onLine(chart.words().above(), plot.area().getMinY() + HIGH + APART));
    labels.add(free.onLine(chart.words().below(), plot.area().getMaxY() - 2 * APART));
    return new TrailLabels(labels);
  }

  private static List<TrailChart.Aim> ending(
      TrailChart chart, TrailPlot plot, Predicate<Point2D> where) {
    return chart.aims().stream()
        .filter(aim -> where.test(plot.end(aim)))
        .sorted(Comparator.comparing((TrailChart.Aim aim) -> -aim.rate().trailPx(1)))
        .toList();
  }

  private static List<Label> atTop(TrailChart chart, TrailPlot plot) {
    List<TrailChart.Aim> aims =
        ending(chart, plot, end -> end.getX() < plot.area().getMaxX() - APART);
    double[] wide =
        aims.stream().mapToDouble(a -> TextMeasure.width(font(a), chart.endName(a))).toArray();
    double[] wanted = aims.stream().mapToDouble(aim -> plot.end(aim).getX()).toArray();
    double most = plot.area().getMaxX();
    double[] middles = Spread.of(wanted, wide, APART, plot.area().getMinX(), most);
    List<Label> labels = new ArrayList<>();
    for (int i = 0; i < aims.size(); i++) {
      Point2D end = plot.end(aims.get(i));
      double bottom = end.getY() - LEADER_ROOM;
      Rectangle2D box =
          new Rectangle2D.Double(middles[i] - wide[i] / 2, bottom - HIGH, wide[i], HIGH);
      Line2D leader = new Line2D.Double(end, new Point2D.Double(middles[i], bottom + 1));
      labels.add(new Label(chart.endName(aims.get(i)), box, List.of(leader), aims.get(i).isOwn()));
    }
    return labels;
  }

  private static List<Label> atRight(TrailChart chart, TrailPlot plot) {
    List<TrailChart.Aim> aims =
        ending(chart, plot, end -> end.getX() >= plot.area().getMaxX() - APART);
    double[] high = aims.stream().mapToDouble(aim -> HIGH).toArray();
    double[] wanted = aims.stream().mapToDouble(aim -> plot.end(aim).getY()).toArray();
    double most = plot.area().getMaxY();
    double[] middles = Spread.of(wanted, high, 1, plot.area().getMinY(), most);
    List<Label> labels = new ArrayList<>();
    for (int i = 0; i < aims.size(); i++) {
      double wide = TextMeasure.width(font(aims.get(i)), chart.endName(aims.get(i)));
      double left = plot.area().getMaxX() + END_GAP;
      Rectangle2D box = new Rectangle2D.Double(left, middles[i] - HIGH / 2, wide, HIGH);
      Point2D end = plot.end(aims.get(i));
      Line2D leader = new Line2D.Double(end, new Point2D.Double(left - 1, middles[i]));
      labels.add(new Label(chart.endName(aims.get(i)), box, List.of(leader), aims.get(i).isOwn()));
    }
    return labels;
  }

  void draw(Graphics2D graphics) {
    graphics.setStroke(new BasicStroke(0.5f));
    for (Label label : labels) {
      graphics.setColor(Palette.MUTED);
      label.leader().forEach(graphics::draw);
      graphics.setColor(Palette.INK);
      graphics.setFont(font(label.isBold()));
      float base = (float) (label.box().getMaxY() - DESCENT);
      graphics.drawString(label.words(), (float) label.box().getMinX(), base);
    }
  }
}
