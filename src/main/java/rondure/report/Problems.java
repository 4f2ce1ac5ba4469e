package rondure.report;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import rondure.night.FrameStatus;
import rondure.night.NightFrame;

/** What could not be measured, and why, in a few sentences for the first page. */
final class Problems {
  private static final int FEW = 3;
  private static final int LONGEST_NAME = 28;
  private static final int LONGEST_REASON = 160;

  private Problems() {}

  static List<String> of(ReportContext context) {
    Map<FrameStatus, Integer> counts = new EnumMap<>(FrameStatus.class);
    for (NightFrame frame : context.book().frames()) {
      counts.merge(frame.status(), 1, Integer::sum);
    }
    counts.remove(FrameStatus.MEASURED);
    List<String> problems = new ArrayList<>();
    counts.forEach(
        (status, count) -> problems.add(context.words().count("problem." + status, count)));
    problems.addAll(reasons(context));
    new TreeMap<>(context.book().ignoredCounts())
        .forEach((kind, count) -> problems.add(ignored(context, kind, count)));
    if (problems.isEmpty()) {
      problems.add(context.words().say("problem.nothing"));
    }
    return problems;
  }

  /** One by one where they are few; else they stand in their table. */
  private static List<String> reasons(ReportContext context) {
    List<NightFrame> frames =
        context.book().frames().stream()
            .filter(frame -> frame.status() != FrameStatus.MEASURED && frame.reason().isPresent())
            .toList();
    if (frames.size() > FEW) {
      return List.of();
    }
    return frames.stream()
        .map(
            frame ->
                context
                    .words()
                    .say(
                        "problem.reason",
                        "file",
                        Figures.shortened(frame.file(), LONGEST_NAME),
                        "reason",
                        Figures.shortened(frame.reason().orElseThrow(), LONGEST_REASON)))
        .toList();
  }

  private static String ignored(ReportContext context, String kind, int count) {
    String key = "ignored." + kind;
    return context.words().count(context.words().has(key + ".one") ? key : "ignored.other", count);
  }
}
