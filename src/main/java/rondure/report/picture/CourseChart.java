package rondure.report.picture;

import java.awt.Graphics2D;
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
  static final double RIGHT = 3;
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
    CourseAxisDrawing around = new CourseAxisDrawing(axis, plot);
    around.drawScenes(graphics, scenes);
    double top = top();
    for (Panel panel : panels) {
      around.drawSceneLines(
          graphics, scenes, top + PanelDrawing.TITLE_ROOM, top + panel.heightPx());
      new PanelDrawing(panel, axis, plot).draw(graphics, top);
      top += panel.heightPx();
    }
    around.drawAxis(graphics, top);
    double lanesTop = top + AXIS_ROOM;
    places.forEach(
        place -> around.drawEvent(graphics, place, lanesTop + place.lane() * LANE_HIGH + 2));
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
}
