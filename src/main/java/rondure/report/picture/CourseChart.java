package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;

/**
 * Several quantities against time or order, one above another on one axis, with the night's events
 * named under it.
 *
 * @param panels from top to bottom
 * @param axis what runs to the right
 * @param events the weightiest first
 * @param scenes where scenes begin, left to right; none where there is only one
 * @param lanes for the names of events, at most
 */
public record CourseChart(
    List<Panel> panels, CourseAxis axis, List<Event> events, List<SceneStart> scenes, int lanes)
    implements Picture {
  static final float FONT_SIZE = 9.5f;
  static final double GUTTER = 37;
  private static final double RIGHT = 3;
  private static final double SCENES_ROOM = 14;
  private static final double AXIS_ROOM = 17;
  private static final double LANE_HIGH = 17;
  private static final double WIDEST_BAND = 0.4;
  private static final double LEAST_BAR = 2.5;

  /**
   * One quantity.
   *
   * @param title quantity and unit
   * @param meaning which way is better, and the middle
   * @param lines values of consecutive frames, joined
   * @param lowest lower end of the axis
   * @param highest upper end of the axis
   * @param heightPx of the panel with its title
   */
  public record Panel(
      String title,
      String meaning,
      List<Line> lines,
      double lowest,
      double highest,
      double heightPx) {
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

  /**
   * @param words a few
   * @param from where it began on the axis
   * @param to where it ended
   */
  public record Event(String words, double from, double to) {}

  /**
   * @param x where on the axis
   * @param words its name in short
   */
  public record SceneStart(double x, String words) {}

  public CourseChart {
    panels = List.copyOf(panels);
    events = List.copyOf(events);
    scenes = List.copyOf(scenes);
  }

  /** The height it needs at a width (CSS pixels). */
  public double heightFor(double width) {
    int used = 1 + places(width).stream().mapToInt(EventLanes.Place::lane).max().orElse(-1);
    return top() + panelsHigh() + AXIS_ROOM + used * LANE_HIGH + 2;
  }

  /** How many events find no place under the axis at a width. */
  public int unnamed(double width) {
    return events.size()
        - places(width).stream().mapToInt(place -> place.named().bars().size()).sum();
  }

  private double top() {
    return scenes.isEmpty() ? 0 : SCENES_ROOM;
  }

  private double panelsHigh() {
    return panels.stream().mapToDouble(Panel::heightPx).sum();
  }

  private static double plotWidth(double width) {
    return width - GUTTER - RIGHT;
  }

  List<EventLanes.Place> places(double width) {
    double plot = plotWidth(width);
    List<EventLanes.Named> named =
        events.stream().map(e -> new EventLanes.Named(e.words(), List.of(bar(e, plot)))).toList();
    return EventLanes.place(EventLanes.joined(named), plot, lanes);
  }

  private EventLanes.Bar bar(Event event, double plot) {
    double from = axis.x(event.from(), plot);
    double to = axis.x(event.to(), plot);
    double lacking = Math.max(0, LEAST_BAR - (to - from)) / 2;
    return new EventLanes.Bar(from - lacking, to + lacking);
  }

  @Override
  public void draw(Graphics2D graphics, double width, double height) {
    double plot = plotWidth(width);
    List<EventLanes.Place> places = places(width);
    drawBands(graphics, places, plot);
    drawScenes(graphics, plot);
    double top = top();
    for (Panel panel : panels) {
      new PanelDrawing(panel, axis, plot).draw(graphics, top);
      top += panel.heightPx();
    }
    drawAxis(graphics, plot, top);
    places.forEach(place -> drawEvent(graphics, place, top() + panelsHigh() + AXIS_ROOM));
  }

  /** A pale band through all panels while something happened, unless it took most of the night. */
  private void drawBands(Graphics2D graphics, List<EventLanes.Place> places, double plot) {
    graphics.setColor(Palette.GROUND);
    for (EventLanes.Place place : places) {
      double bottom = top() + panelsHigh() + AXIS_ROOM + place.lane() * LANE_HIGH + 2;
      for (EventLanes.Bar bar : place.named().bars()) {
        double wide = bar.to() - bar.from();
        if (wide <= WIDEST_BAND * plot) {
          graphics.fill(new Rectangle2D.Double(GUTTER + bar.from(), top(), wide, bottom - top()));
        }
      }
    }
  }

  private void drawScenes(Graphics2D graphics, double plot) {
    graphics.setFont(ReportFonts.sans(FONT_SIZE));
    double freeFrom = 0;
    for (SceneStart scene : scenes) {
      double x = GUTTER + axis.x(scene.x(), plot);
      graphics.setColor(Palette.MUTED);
      graphics.setStroke(
          new BasicStroke(0.7f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 1, dashes(), 0));
      if (scene != scenes.get(0)) {
        graphics.draw(new Line2D.Double(x, 0, x, top() + panelsHigh()));
      }
      double wide = TextMeasure.width(graphics.getFont(), scene.words());
      if (x + 3 >= freeFrom && x + 3 + wide <= GUTTER + plot) {
        graphics.drawString(scene.words(), (float) x + 3, 8.5f);
        freeFrom = x + wide + 10;
      }
    }
  }

  private static float[] dashes() {
    return new float[] {2.5f, 2.5f};
  }

  private void drawAxis(Graphics2D graphics, double plot, double y) {
    graphics.setFont(ReportFonts.sans(FONT_SIZE));
    graphics.setStroke(new BasicStroke(0.8f));
    for (NiceTicks.Tick tick : axis.ticks(plot)) {
      double x = GUTTER + axis.x(tick.value(), plot);
      graphics.setColor(Palette.MUTED);
      graphics.draw(new Line2D.Double(x, y, x, y + 3));
      double wide = TextMeasure.width(graphics.getFont(), tick.words());
      if (x - wide / 2 >= GUTTER - 6 && x + wide / 2 <= GUTTER + plot + RIGHT) {
        graphics.drawString(tick.words(), (float) (x - wide / 2), (float) y + 12.5f);
      }
    }
    graphics.setColor(Palette.MUTED);
    graphics.draw(new Line2D.Double(GUTTER, y, GUTTER + plot, y));
    double wide = TextMeasure.width(graphics.getFont(), axis.label());
    graphics.drawString(axis.label(), (float) (GUTTER - 12 - wide), (float) y + 12.5f);
  }

  private static void drawEvent(Graphics2D graphics, EventLanes.Place place, double lanesTop) {
    double y = lanesTop + place.lane() * LANE_HIGH + 2;
    graphics.setColor(Palette.INK);
    for (EventLanes.Bar bar : place.named().bars()) {
      graphics.fill(new Rectangle2D.Double(GUTTER + bar.from(), y, bar.to() - bar.from(), 2.5));
    }
    graphics.setFont(ReportFonts.sans(FONT_SIZE));
    graphics.drawString(
        place.named().words(), (float) (GUTTER + place.wordsFrom()), (float) y + 12f);
  }
}
