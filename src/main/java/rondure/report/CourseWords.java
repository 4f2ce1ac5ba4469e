package rondure.report;

import java.util.ArrayList;
import java.util.List;
import rondure.night.NightFrame;
import rondure.report.picture.CourseChart;

/**
 * What is said around and about the chart of a night's course.
 *
 * @param context the set
 * @param frames measured frames in order; all have times, or none has
 */
record CourseWords(ReportContext context, List<NightFrame> frames) {

  String heading() {
    String count = context.words().count("count.frame", frames.size());
    if (!NightCourse.isTimed(frames.get(0))) {
      return context.words().say("course.headingOrder", "frames", count);
    }
    return context
        .words()
        .say(
            "course.headingTime",
            "date",
            Figures.date(frames.get(0).facts().captureTime().orElseThrow().local()),
            "frames",
            count,
            "kept",
            Long.toString(frames.stream().filter(Ranking::isKeep).count()));
  }

  String alt(List<CourseQuantity> quantities, List<CourseChart.Event> events) {
    List<String> ranges =
        quantities.stream()
            .map(
                quantity ->
                    context
                        .words()
                        .say(
                            "alt.course.range",
                            "quantity",
                            context.words().say("course.panel." + quantity.key()),
                            "least",
                            quantity.printed(quantity.least()),
                            "most",
                            quantity.printed(quantity.most())))
            .toList();
    List<String> named = events.stream().map(CourseChart.Event::words).distinct().toList();
    String frameCount = context.words().count("count.frame", frames.size());
    String panels = String.join("; ", ranges);
    return context.words().say("alt.course", "frames", frameCount, "panels", panels)
        + (named.isEmpty()
            ? ""
            : " " + context.words().say("alt.course.events", "events", String.join("; ", named)));
  }

  /** That the camera stood still, where its motion would show; how many events are not named. */
  List<String> remarks(List<CourseQuantity> quantities, int unnamed) {
    List<String> remarks = new ArrayList<>();
    boolean moves = quantities.stream().anyMatch(quantity -> quantity.key().equals(CameraWay.KEY));
    int seen =
        (int) frames.stream().filter(frame -> CameraWay.isKnown(context.book(), frame)).count();
    if (!moves && seen > 1) {
      remarks.add(context.words().say("course.stoodStill", "frames", Integer.toString(seen)));
    }
    if (unnamed > 0) {
      remarks.add(context.words().count("course.unnamed", unnamed));
    }
    return remarks;
  }
}
