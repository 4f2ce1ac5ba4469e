package rondure.report.picture;

import java.awt.geom.Line2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Finds places for words in a chart of lines: beside what they name, on no line, on no dot and on
 * no other words; a hairline leads to those that had to stand off.
 */
final class FreePlaces {
  private static final double HIGH = 12;
  private static final double[] REACHES = {5, 9, 14, 20, 28, 38, 50, 64};
  private static final int WAYS = 24;
  private static final double LEADER_FROM = 9;
  private static final double CROSSED = 14;
  private static final double ON_A_LINE = 1000;
  private static final double CLEARLY = 14;
  private static final double MARGIN = 1.5;
  private static final double STEP = 4;
  private static final double INSET = 7;

  private final Rectangle2D area;
  private final List<Line2D> lines = new ArrayList<>();
  private final List<Point2D> dots = new ArrayList<>();
  private final List<Rectangle2D> taken = new ArrayList<>();

  private FreePlaces(Rectangle2D area) {
    this.area = area;
  }

  /** Lines, dots and the star's own width are there already. */
  static FreePlaces of(TrailChart chart, TrailPlot plot) {
    FreePlaces free = new FreePlaces(plot.area());
    double widthPx = chart.width().px();
    double y = plot.y(widthPx);
    free.lines.add(new Line2D.Double(plot.area().getMinX(), y, plot.area().getMaxX(), y));
    for (TrailChart.Aim aim : chart.aims()) {
      free.lines.add(new Line2D.Double(plot.origin(), plot.end(aim)));
      plot.crossing(aim, widthPx).ifPresent(free.dots::add);
    }
    free.dots.forEach(dot -> free.taken.add(around(dot, TrailChart.DOT)));
    return free;
  }

  private static Rectangle2D around(Point2D at, double size) {
    return new Rectangle2D.Double(at.getX() - size / 2, at.getY() - size / 2, size, size);
  }

  /** On a level line, as far right as there is room. */
  TrailLabels.Label onLine(String words, double y) {
    double wide = TextMeasure.width(ReportFonts.sans(TrailChart.FONT_SIZE), words);
    double right = area.getMaxX() - INSET;
    Rectangle2D best = new Rectangle2D.Double(right - wide, y - 3 - HIGH, wide, HIGH);
    for (double left = right - wide; left >= area.getMinX() && cost(best) > 0; left -= STEP) {
      Rectangle2D box = new Rectangle2D.Double(left, y - 3 - HIGH, wide, HIGH);
      best = cost(box) < cost(best) ? box : best;
    }
    taken.add(best);
    return new TrailLabels.Label(words, best, List.of(), false);
  }

  /** The exposure beside its dot. */
  TrailLabels.Label beside(Point2D dot, TrailChart.Aim aim) {
    double wide = TextMeasure.width(TrailLabels.font(aim), aim.crossing());
    Rectangle2D best = around(dot, 0);
    double least = Double.POSITIVE_INFINITY;
    for (double reach : REACHES) {
      for (int way = 0; way < WAYS; way++) {
        Rectangle2D box = box(dot, reach, 2 * Math.PI * way / WAYS, wide);
        double cost =
            cost(box)
                + reach
                + mistakable(dot, box)
                + leader(dot, box, reach).map(this::crossed).orElse(0.0);
        if (cost < least) {
          least = cost;
          best = box;
        }
      }
    }
    taken.add(best);
    double stands = distance(dot, best);
    List<Line2D> leader = leader(dot, best, stands).stream().toList();
    lines.addAll(leader);
    return new TrailLabels.Label(aim.crossing(), best, leader, aim.isOwn());
  }

  /** How much nearer than its own dot, or hardly farther, another one is. */
  private double mistakable(Point2D dot, Rectangle2D box) {
    double other =
        dots.stream()
            .filter(d -> !d.equals(dot))
            .mapToDouble(d -> distance(d, box))
            .min()
            .orElse(Double.MAX_VALUE);
    return Math.max(0, CLEARLY - (other - distance(dot, box)));
  }

  private static Rectangle2D box(Point2D dot, double reach, double angle, double wide) {
    double x = dot.getX() + Math.cos(angle) * (reach + wide / 2);
    double y = dot.getY() + Math.sin(angle) * (reach + HIGH / 2);
    return new Rectangle2D.Double(x - wide / 2, y - HIGH / 2, wide, HIGH);
  }

  private static double distance(Point2D dot, Rectangle2D box) {
    return dot.distance(nearest(dot, box));
  }

  private static Point2D nearest(Point2D dot, Rectangle2D box) {
    return new Point2D.Double(
        Math.max(box.getMinX(), Math.min(box.getMaxX(), dot.getX())),
        Math.max(box.getMinY(), Math.min(box.getMaxY(), dot.getY())));
  }

  private static Optional<Line2D> leader(Point2D dot, Rectangle2D box, double reach) {
    return reach < LEADER_FROM
        ? Optional.empty()
        : Optional.of(new Line2D.Double(dot, nearest(dot, box)));
  }

  private double crossed(Line2D leader) {
    return CROSSED * lines.stream().filter(leader::intersectsLine).count();
  }

  private double cost(Rectangle2D box) {
    Rectangle2D wider =
        new Rectangle2D.Double(
            box.getMinX() - MARGIN,
            box.getMinY() - MARGIN / 2,
            box.getWidth() + 2 * MARGIN,
            box.getHeight() + MARGIN);
    boolean isFree = area.contains(wider) && taken.stream().noneMatch(wider::intersects);
    double onLines = lines.stream().filter(wider::intersectsLine).count();
    return (isFree ? 0 : ON_A_LINE * ON_A_LINE) + ON_A_LINE * onLines;
  }
}
