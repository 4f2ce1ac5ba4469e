package rondure.report;

import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import rondure.base.RobustStats;
import rondure.intake.Fact;
import rondure.night.FrameShape;
import rondure.night.NightFrame;
import rondure.night.Scene;
import rondure.report.picture.CourseChart;
import rondure.report.picture.CourseChart.Axis;
import rondure.report.picture.CourseChart.Line;
import rondure.report.picture.CourseChart.Panel;
import rondure.report.picture.CourseChart.Point;
import rondure.report.picture.Mark;

/** Makes the view of "The course of the night". */
final class CoursePage {
  private static final int CHART_WIDTH = 655;
  private static final int HIGH_PANEL = 132;
  private static final int LOW_PANEL = 82;
  private static final int TITLES_AND_AXIS = 95;

  /** Of more exposures only the shortest and the longest are named. */
  private static final int TRAILS_OF_SCENE = 3;

  private static final List<List<NightFrame>> NO_GROUPS = List.of();
  private final ReportContext context;
  private final int panelHeight;

  private CoursePage(ReportContext context, int panelHeight) {
    this.panelHeight = panelHeight;
    this.context = context;
  }

  /** A lone frame has no course, but its lens and aim tell how far stars trail. */
  static boolean isWorthIt(ReportContext context) {
    return context.measured().size() > 1 || !new TrailTables(context).chosen().isEmpty();
  }

  static CourseView view(ReportContext context) {
    List<List<NightFrame>> groups = new ArrayList<>();
    for (List<NightFrame> night : context.byNight()) {
      night.stream()
          .filter(Ranking::isMeasured)
          .collect(Collectors.partitioningBy(frame -> frame.facts().captureTime().isEmpty()))
          .values()
          .stream()
          .filter(frames -> !frames.isEmpty())
          .forEach(groups::add);
    }
    CoursePage page = new CoursePage(context, groups.size() > 1 ? LOW_PANEL : HIGH_PANEL);
    List<CourseView.Chart> charts = new ArrayList<>();
    for (List<NightFrame> frames : context.measured().size() > 1 ? groups : NO_GROUPS) {
      boolean timed = frames.get(0).facts().captureTime().isPresent();
      charts.add(page.chart(frames, timed ? Axis.TIME : Axis.ORDER, charts.size()));
    }
    TrailTables tables = new TrailTables(context);
    List<SceneFigures> tabled = tables.chosen();
    return new CourseView(
        charts,
        new EventWords(context.book(), context.words()).lines(),
        tabled.stream().map(tables::table).toList(),
        page.trails(tabled.stream().map(SceneFigures::scene).toList()));
  }

  private CourseView.Chart chart(List<NightFrame> frames, Axis axis, int number) {
    String name = "course-" + number;
    List<Panel> panels =
        List.of(
            panel("width", frames, axis, FrameShape::fwhmPx, 0),
            panel("roundness", frames, axis, FrameShape::roundness, Double.NaN),
            panel("sky", frames, axis, shape -> 100 * shape.skyBackground(), 0));
    String axisLabel = context.words().say(axis == Axis.TIME ? "course.clock" : "course.order");
    context.pictures().add(name, new CourseChart(panels, axis, axisLabel));
    return new CourseView.Chart(
        heading(frames, axis),
        new PictureView(name, alt(frames), CHART_WIDTH, 3 * panelHeight + TITLES_AND_AXIS));
  }

  private String heading(List<NightFrame> frames, Axis axis) {
    String count = context.words().count("count.frame", frames.size());
    if (axis == Axis.ORDER) {
      return context.words().say("course.headingOrder", "frames", count);
    }
    String date = Figures.date(frames.get(0).facts().captureTime().orElseThrow().local());
    return context
        .words()
        .say(
            "course.headingTime",
            "date",
            date,
            "frames",
            count,
            "kept",
            Long.toString(frames.stream().filter(Ranking::isKeep).count()));
  }

  private Panel panel(
      String key,
      List<NightFrame> frames,
      Axis axis,
      ToDoubleFunction<FrameShape> quantity,
      double lowest) {
    double[] values =
        frames.stream().mapToDouble(f -> quantity.applyAsDouble(f.shape().orElseThrow())).toArray();
    double least = RobustStats.percentile(0, values);
    double most = RobustStats.percentile(1, values);
    boolean isShare = Double.isNaN(lowest);
    double low = isShare ? Math.min(0.6, Math.floor((least - 0.03) * 5) / 5) : lowest;
    double high = isShare ? 1.02 : Math.max(most * (key.equals("sky") ? 1.3 : 1.08), 0.01);
    String title =
        context
            .words()
            .say("course.panel." + key, "median", median(key, RobustStats.median(values)));
    return new Panel(title, lines(frames, axis, quantity), Math.max(0, low), high);
  }

  private static String median(String key, double value) {
    return switch (key) {
      case "width" -> Figures.px(value);
      case "roundness" -> Figures.fixed(2, value);
      default -> Figures.plain(1, value);
    };
  }

  /** Each scene its own line, frames in the order they come. */
  private List<Line> lines(
      List<NightFrame> frames, Axis axis, ToDoubleFunction<FrameShape> quantity) {
    List<Line> lines = new ArrayList<>();
    List<Integer> scenes =
        frames.stream().map(frame -> frame.sceneNumber().orElse(0)).distinct().toList();
    for (int scene : scenes) {
      List<Point> points = new ArrayList<>();
      for (int i = 0; i < frames.size(); i++) {
        NightFrame frame = frames.get(i);
        if (frame.sceneNumber().orElse(0) == scene) {
          double x = axis == Axis.TIME ? milliseconds(frame) : i + 1;
          double y = quantity.applyAsDouble(frame.shape().orElseThrow());
          points.add(new Point(x, y, Mark.of(frame)));
        }
      }
      lines.add(new Line(points));
    }
    return lines;
  }

  private static double milliseconds(NightFrame frame) {
    return frame
        .facts()
        .captureTime()
        .orElseThrow()
        .local()
        .toInstant(ZoneOffset.UTC)
        .toEpochMilli();
  }

  private String alt(List<NightFrame> frames) {
    double[] widths = frames.stream().mapToDouble(f -> f.shape().orElseThrow().fwhmPx()).toArray();
    double[] roundness =
        frames.stream().mapToDouble(f -> f.shape().orElseThrow().roundness()).toArray();
    return context
        .words()
        .say(
            "alt.course",
            "frames",
            context.words().count("count.frame", frames.size()),
            "widthLeast",
            Figures.px(RobustStats.percentile(0, widths)),
            "widthMost",
            Figures.px(RobustStats.percentile(1, widths)),
            "roundnessLeast",
            Figures.fixed(2, RobustStats.percentile(0, roundness)),
            "roundnessMost",
            Figures.fixed(2, RobustStats.percentile(1, roundness)));
  }

  /** For each scene the trail that its exposures can give, shortest first. */
  private List<String> trails(List<Scene> tabled) {
    List<String> trails = new ArrayList<>();
    for (Scene scene : context.book().scenes()) {
      if (tabled.contains(scene)) {
        continue;
      }
      Map<Double, Double> trailPx = new TreeMap<>();
      for (NightFrame frame : Ranking.bestFirst(context.book(), scene)) {
        Optional<Double> seconds = frame.facts().exposureSeconds().map(Fact::value);
        seconds.ifPresent(s -> frame.trailPredictedPx().ifPresent(px -> trailPx.put(s, px)));
      }
      List<Double> exposures = List.copyOf(trailPx.keySet());
      for (int i = 0; i < exposures.size(); i++) {
        boolean shown = exposures.size() <= TRAILS_OF_SCENE || i % (exposures.size() - 1) == 0;
        if (shown) {
          trails.add(trail(scene, exposures.get(i), trailPx.get(exposures.get(i))));
        }
      }
    }
    return trails;
  }

  private String trail(Scene scene, double seconds, double trailPx) {
    return context
        .words()
        .say(
            "course.trail",
            "scene",
            String.format(Locale.ROOT, "%d", scene.number()),
            "exposure",
            Figures.exposure(seconds),
            "trail",
            Figures.px(trailPx),
            "share",
            scene.sharpestFwhmPx().map(width -> Figures.fixed(1, trailPx / width)).orElse("?"));
  }
}
