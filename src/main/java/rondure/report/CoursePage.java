package rondure.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import rondure.night.NightFrame;
import rondure.night.Scene;

/** Makes the view of "The course of the night". */
final class CoursePage {
  private static final int STOP_DOWN_SCENES = 4;
  private final ReportContext context;

  private CoursePage(ReportContext context) {
    this.context = context;
  }

  /** A lone frame has no course, but its lens and aim tell how far stars trail. */
  static boolean isWorthIt(ReportContext context) {
    return context.measured().size() > 1 || !new TrailTables(context).chosen().isEmpty();
  }

  static CourseView view(ReportContext context) {
    CoursePage page = new CoursePage(context);
    TrailTables tables = new TrailTables(context);
    List<SceneFigures> tabled = tables.chosen();
    return new CourseView(
        page.charts(),
        new EventWords(context.book(), context.words()).lines(),
        tabled.stream().map(tables::table).toList(),
        page.trails(tabled.stream().map(SceneFigures::scene).toList()),
        page.stopDown());
  }

  /** One for the frames of each night that have times, and one for those that have none. */
  private List<CourseView.Chart> charts() {
    List<List<NightFrame>> groups = new ArrayList<>();
    for (List<NightFrame> night : context.byNight()) {
      night.stream()
          .filter(Ranking::isMeasured)
          .collect(Collectors.partitioningBy(frame -> frame.facts().captureTime().isEmpty()))
          .values()
          .stream()
          .filter(frames -> frames.size() > 1)
          .forEach(groups::add);
    }
    List<CourseView.Chart> charts = new ArrayList<>();
    if (context.measured().size() > 1) {
      for (List<NightFrame> frames : groups) {
        charts.add(new NightCourse(context, frames).chart(charts.size(), groups.size()));
      }
    }
    return charts;
  }

  /** For each scene the trail that its exposures can give. */
  private List<String> trails(List<Scene> tabled) {
    return context.book().scenes().stream()
        .filter(scene -> !tabled.contains(scene))
        .flatMap(scene -> new SceneTrails(context).lines(scene).stream())
        .toList();
  }

  private List<String> stopDown() {
    return context.book().scenes().stream()
        .map(scene -> SceneFigures.of(context.book(), scene))
        .flatMap(figures -> StopDown.sentence(figures, context.words()).stream())
        .limit(STOP_DOWN_SCENES)
        .toList();
  }
}
