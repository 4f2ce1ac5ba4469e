package rondure.report;

import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import rondure.night.Event;
import rondure.night.NightFrame;
import rondure.report.picture.CourseAxis;
import rondure.report.picture.CourseChart;
import rondure.report.picture.Mark;

/**
 * The course of one night as a chart.
 *
 * @param context the set
 * @param frames measured frames in order; all have times, or none has
 */
record NightCourse(ReportContext context, List<NightFrame> frames) {
  /** Of fewer frames nobody needs to be told the half. */
  private static final int LEAST_FOR_HALF = 4;

  private static final double ROOM_OF_PAGE = 720;
  private static final double ROOM_OF_HALF_PAGE = 310;
  private static final double SCENE_LINE_SHARE = 0.008;
  private static final int FEW_QUANTITIES = 3;
  private static final int FEW_NIGHTS = 3;
  private static final int LANES_OF_ONE = 6;
  private static final int LANES_OF_MANY = 3;
  private static final double TALLEST_PANEL = 150;
  private static final double FIRST_TALLER = 1.35;

  static boolean isTimed(NightFrame frame) {
    return frame.facts().captureTime().isPresent();
  }

  static double millis(NightFrame frame) {
    return frame
        .facts()
        .captureTime()
        .orElseThrow()
        .local()
        .toInstant(ZoneOffset.UTC)
        .toEpochMilli();
  }

  /**
   * @param number of the chart, from 0
   * @param roomOfOne height for the panels where it is the only one
   * @param charts how many there are: the more, the lower
   */
  CourseView.Chart chart(int number, double roomOfOne, int charts) {
    String name = "course-" + number;
    int width = context.pictureWidthPx();
    CourseWords words = new CourseWords(context, frames);
    List<CourseQuantity> quantities = CourseQuantity.of(context.book(), frames);
    double height =
        Math.min(
            TALLEST_PANEL,
            (charts == 1 ? roomOfOne : room(charts, quantities.size()))
                / (quantities.size() + FIRST_TALLER - 1));
    List<CourseChart.Panel> panels =
        IntStream.range(0, quantities.size())
            .mapToObj(i -> panel(quantities.get(i), i == 0 ? FIRST_TALLER * height : height))
            .toList();
    CourseChart chart =
        new CourseChart(
            panels, axis(), events(), scenes(), charts == 1 ? LANES_OF_ONE : LANES_OF_MANY);
    context.pictures().add(name, chart);
    long high = Math.round(Math.ceil(chart.heightFor(width)));
    return new CourseView.Chart(
        words.heading(),
        new PictureView(name, words.alt(quantities, chart.events()), width, high),
        words.remarks(quantities, chart.unnamed(width)));
  }

  /** Of several nights one or two stand on a page. */
  private static double room(int charts, int quantities) {
    boolean isLow = charts > FEW_NIGHTS || quantities <= FEW_QUANTITIES;
    return isLow ? ROOM_OF_HALF_PAGE : ROOM_OF_PAGE;
  }

  private boolean isTimed() {
    return isTimed(frames.get(0));
  }

  private double x(int place) {
    return isTimed() ? millis(frames.get(place)) : place + 1;
  }

  private CourseAxis axis() {
    double[] xs = IntStream.range(0, frames.size()).mapToDouble(this::x).sorted().toArray();
    CourseAxis.Kind kind = isTimed() ? CourseAxis.Kind.TIME : CourseAxis.Kind.ORDER;
    String label = context.words().say(isTimed() ? "course.clock" : "course.order");
    return new CourseAxis(kind, xs[0], xs[xs.length - 1], label);
  }

  private CourseChart.Panel panel(CourseQuantity quantity, double height) {
    String key = "course.panel." + quantity.key();
    boolean isFew = quantity.count() < LEAST_FOR_HALF && context.words().has(key + ".few");
    String meaning = key + (isFew ? ".few" : ".meaning");
    return new CourseChart.Panel(
        context.words().say(key),
        context.words().say(meaning, "median", quantity.printed(quantity.median())),
        lines(quantity),
        quantity.lowest(),
        quantity.highest(),
        height);
  }

  /** Frames in the order they come, parted by long pauses and where another scene begins. */
  private List<CourseChart.Line> lines(CourseQuantity quantity) {
    boolean[] breaks = LongPause.before(frames);
    List<CourseChart.Line> lines = new ArrayList<>();
    List<CourseChart.Point> points = new ArrayList<>();
    for (int i = 0; i < frames.size(); i++) {
      if (breaks[i] && !points.isEmpty()) {
        lines.add(new CourseChart.Line(points));
        points = new ArrayList<>();
      }
      double value = quantity.values().get(i);
      if (Double.isFinite(value)) {
        points.add(new CourseChart.Point(x(i), value, Mark.of(frames.get(i))));
      }
    }
    lines.add(new CourseChart.Line(points));
    return lines;
  }

  private List<CourseChart.Event> events() {
    NightEvents events = new NightEvents(context);
    Map<String, Integer> positions = context.positions();
    int[] index = frames.stream().mapToInt(frame -> positions.get(frame.file())).toArray();
    List<CourseChart.Event> named = new ArrayList<>();
    for (Event event : events.costliestFirst()) {
      double[] xs =
          IntStream.range(0, index.length)
              .filter(i -> index[i] >= event.firstFrame() && index[i] <= event.lastFrame())
              .mapToDouble(this::x)
              .sorted()
              .toArray();
      if (xs.length > 0) {
        named.add(new CourseChart.Event(events.name(event), xs[0], xs[xs.length - 1]));
      }
    }
    return named;
  }

  /** Where scenes begin; none where the night has but one. */
  private List<CourseChart.SceneStart> scenes() {
    List<CourseChart.SceneStart> starts = new ArrayList<>();
    for (int i = 0; i < frames.size(); i++) {
      int scene = frames.get(i).sceneNumber().orElse(0);
      if (i == 0 || scene != frames.get(i - 1).sceneNumber().orElse(0)) {
        String words = context.words().say("course.scene", "number", Integer.toString(scene));
        starts.add(new CourseChart.SceneStart(i == 0 ? x(i) : between(i), words));
      }
    }
    return starts.size() > 1 ? starts : List.of();
  }

  /** A little before a frame. */
  private double between(int place) {
    double span = x(frames.size() - 1) - x(0);
    double gap = x(place) - x(place - 1);
    return x(place) - Math.min(gap / 2, Math.max(SCENE_LINE_SHARE * span, isTimed() ? 0 : 0.5));
  }
}
