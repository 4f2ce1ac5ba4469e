package rondure.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import rondure.night.NightFrame;
import rondure.night.Scene;

/** Makes the view of "The course of the night". */
final class CoursePage {
  private static final double HEAD_AND_AXIS = 185;
  private static final double LEAST_ROOM = 450;
  private static final double USUAL_ROOM = 620;
  private static final double MOST_ROOM = 680;
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
    List<String> events = new EventWords(context.book(), context.words()).lines();
    List<CourseView.Chart> charts = page.charts(events);
    List<SceneFigures> tabled = new TrailTables(context).chosen();
    List<String> trails = page.trails(tabled.stream().map(SceneFigures::scene).toList());
    Optional<CourseView.Exposure> exposure =
        new TrailPage(context, tabled)
            .view(page.fillsPages(charts, events), page.over(charts, events));
    boolean isBare = charts.isEmpty() && events.isEmpty() && exposure.isEmpty();
    return new CourseView(charts, events, exposure, trails, isBare);
  }

  /** One for the frames of each night that have times, and one for those that have none. */
  private List<CourseView.Chart> charts(List<String> events) {
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
    boolean isOne = groups.size() == 1;
    List<CourseView.Chart> charts = new ArrayList<>();
    if (context.measured().size() > 1) {
      for (List<NightFrame> frames : groups) {
        charts.add(
            new NightCourse(context, frames)
                .chart(charts.size(), isOne ? roomBeside(events) : 0, groups.size()));
      }
    }
    return charts;
  }

  /**
   * What the words of a single night leave of the page; the usual room where they take too much.
   */
  private double roomBeside(List<String> events) {
    return fits(events) ? Math.min(MOST_ROOM, left(events)) : USUAL_ROOM;
  }

  private boolean fillsPages(List<CourseView.Chart> charts, List<String> events) {
    return charts.size() == 1 && fits(events);
  }

  /** What a single night's chart, its axis twice, and words take of the page after theirs. */
  private double over(List<CourseView.Chart> charts, List<String> events) {
    return charts.size() == 1 && !fits(events)
        ? Math.max(0, charts.get(0).picture().heightPx() - left(events))
        : 0;
  }

  private boolean fits(List<String> events) {
    return left(events) >= LEAST_ROOM;
  }

  private double left(List<String> events) {
    GlanceRoom room = new GlanceRoom(context);
    room.take(HEAD_AND_AXIS);
    if (!events.isEmpty()) {
      room.takeHeading();
      room.takeWidePoints(events);
    }
    return room.left();
  }

  /** For each scene the trail that its exposures can give. */
  private List<String> trails(List<Scene> tabled) {
    return context.book().scenes().stream()
        .filter(scene -> !tabled.contains(scene))
        .flatMap(scene -> new SceneTrails(context).lines(scene).stream())
        .toList();
  }
}
