package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * One panel of a course: title, round values at the left, thin lines, and a sign for each frame.
 * Where signs of one kind would cover each other, every frame keeps a dot and some get the sign.
 */
final class PanelDrawing {
  static final double TITLE_ROOM = 17;
  private static final double BOTTOM_ROOM = 8;
  private static final double LARGEST_SIGN = 8.5;
  private static final double LEAST_SIGN = 4.6;
  private static final double DOT = 1.7;
  private static final double TICKS_APART = 16;
  private static final double BARELY_TOUCHING = 0.95;

  private final CourseChart.Panel panel;
  private final CourseAxis axis;
  private final double plot;

  PanelDrawing(CourseChart.Panel panel, CourseAxis axis, double plot) {
    this.panel = panel;
    this.axis = axis;
    this.plot = plot;
  }

  /** A frame's place in pixels. */
  record Spot(double x, double y, Mark mark) {
    double to(Spot other) {
      return Math.hypot(x - other.x, y - other.y);
    }
  }

  void draw(Graphics2D graphics, double top) {
    drawWords(graphics, top);
    drawScale(graphics, top);
    List<Spot> spots = new ArrayList<>();
    graphics.setColor(Palette.ABSENT);
    graphics.setStroke(new BasicStroke(0.5f));
    for (CourseChart.Line line : panel.lines()) {
      List<Spot> joined = line.points().stream().map(point -> spot(point, top)).toList();
      spots.addAll(joined);
      graphics.draw(path(joined));
    }
    drawSpots(graphics, spots);
  }

  private void drawWords(Graphics2D graphics, double top) {
    float base = (float) (top + 10.5);
    graphics.setColor(Palette.INK);
    graphics.setFont(ReportFonts.bold(10.5f));
    graphics.drawString(panel.title(), (float) CourseChart.GUTTER, base);
    double wide = TextMeasure.width(graphics.getFont(), panel.title());
    graphics.setColor(Palette.MUTED);
    graphics.setFont(ReportFonts.sans(10));
    graphics.drawString(panel.meaning(), (float) (CourseChart.GUTTER + wide + 8), base);
  }

  private void drawScale(Graphics2D graphics, double top) {
    graphics.setFont(ReportFonts.sans(CourseChart.FONT_SIZE));
    graphics.setStroke(new BasicStroke(0.4f));
    double high = panel.heightPx() - TITLE_ROOM - BOTTOM_ROOM;
    int steps = (int) Math.max(2, high / TICKS_APART);
    for (NiceTicks.Tick tick : NiceTicks.of(panel.lowest(), panel.highest(), steps)) {
      double y = y(tick.value(), top);
      graphics.setColor(Palette.HAIRLINE);
      graphics.draw(new Line2D.Double(CourseChart.GUTTER, y, CourseChart.GUTTER + plot, y));
      graphics.setColor(Palette.MUTED);
      double wide = TextMeasure.width(graphics.getFont(), tick.words());
      graphics.drawString(tick.words(), (float) (CourseChart.GUTTER - 6 - wide), (float) y + 3.4f);
    }
  }

  private Spot spot(CourseChart.Point point, double top) {
    double within = Math.max(panel.lowest(), Math.min(panel.highest(), point.y()));
    return new Spot(CourseChart.GUTTER + axis.x(point.x(), plot), y(within, top), point.mark());
  }

  private double y(double value, double top) {
    double high = panel.heightPx() - TITLE_ROOM - BOTTOM_ROOM;
    double share = (value - panel.lowest()) / (panel.highest() - panel.lowest());
    return top + TITLE_ROOM + high * (1 - share);
  }

  private static Path2D path(List<Spot> spots) {
    Path2D path = new Path2D.Double();
    for (int i = 0; i < spots.size(); i++) {
      if (i == 0) {
        path.moveTo(spots.get(i).x(), spots.get(i).y());
      } else {
        path.lineTo(spots.get(i).x(), spots.get(i).y());
      }
    }
    return path;
  }

  /** Sharp frames first, so that what went wrong lies on top. */
  private void drawSpots(Graphics2D graphics, List<Spot> spots) {
    double size = size(spots.size());
    List<Spot> signs = thinned(spots, size * BARELY_TOUCHING);
    List<Spot> bottomUp =
        spots.stream().sorted(Comparator.comparing((Spot s) -> s.mark() != Mark.NONE)).toList();
    for (Spot spot : bottomUp) {
      graphics.setColor(spot.mark().colour());
      graphics.fill(new Ellipse2D.Double(spot.x() - DOT / 2, spot.y() - DOT / 2, DOT, DOT));
    }
    signs.stream()
        .sorted(Comparator.comparing((Spot s) -> s.mark() != Mark.NONE))
        .forEach(spot -> spot.mark().draw(graphics, spot.x(), spot.y(), signSize(spot, size)));
  }

  private static double signSize(Spot spot, double size) {
    return spot.mark() == Mark.NONE ? size * 0.8 : size;
  }

  private double size(int frames) {
    return Math.max(LEAST_SIGN, Math.min(LARGEST_SIGN, 1.1 * plot / Math.max(1, frames)));
  }

  /** Those that get their sign: none nearer than so to the one of its kind before it. */
  static List<Spot> thinned(List<Spot> spots, double apart) {
    Map<Mark, Spot> last = new EnumMap<>(Mark.class);
    List<Spot> signs = new ArrayList<>();
    for (Spot spot : spots) {
      Spot before = last.get(spot.mark());
      if (before == null || before.to(spot) >= apart) {
        signs.add(spot);
        last.put(spot.mark(), spot);
      }
    }
    return signs;
  }
}
