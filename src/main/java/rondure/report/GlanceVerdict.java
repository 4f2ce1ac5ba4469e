package rondure.report;

import java.util.Comparator;
import java.util.Map;
import rondure.night.FrameStatus;
import rondure.night.NightFrame;
import rondure.report.picture.Mark;

/** The first sentences of the report: how many frames to keep, and what softened the rest. */
final class GlanceVerdict {
  private final ReportContext context;

  GlanceVerdict(ReportContext context) {
    this.context = context;
  }

  String sentence() {
    int measured = (int) context.measured().stream().filter(f -> !f.isFocusTest()).count();
    int kept = context.kept();
    String key =
        measured == 0
            ? (context.measured().isEmpty() ? "none" : "onlyTests")
            : measured == 1
                ? (kept == 1 ? "singleKept" : "single")
                : kept == measured ? "all" : several(kept);
    Mark worst =
        context.tally(frame -> !Ranking.isKeep(frame)).entrySet().stream()
            .filter(entry -> entry.getKey() != Mark.NONE)
            .max(
                Map.Entry.<Mark, Integer>comparingByValue()
                    .thenComparing(Map.Entry.comparingByKey(Comparator.reverseOrder())))
            .map(Map.Entry::getKey)
            .orElse(Mark.NONE);
    String rest =
        measured == 1
            ? cause(
                context.measured().stream().filter(f -> !f.isFocusTest()).findFirst().orElseThrow())
            : context.words().say("glance.rest." + (worst == Mark.NONE ? calm() : worst));
    return context
        .words()
        .say(
            "glance.verdict." + key,
            "counted",
            context.words().count("count.frame", counted()),
            "measured",
            Integer.toString(measured),
            "kept",
            Integer.toString(kept),
            "rest",
            rest);
  }

  /** Nothing softened the frames much, unless nobody knows. */
  private String calm() {
    boolean explained = context.measured().stream().allMatch(f -> f.verdict().isPresent());
    return explained ? Mark.NONE.name() : "UNEXPLAINED";
  }

  private static String several(int kept) {
    return kept == 0 ? "nothing" : kept == 1 ? "someOne" : "some";
  }

  /** For a lone frame: what its entry says. */
  private String cause(NightFrame frame) {
    return new CauseWords(context.words()).heading(frame) + ".";
  }

  private int counted() {
    return (int)
        context.book().frames().stream()
            .filter(
                frame ->
                    frame.status() == FrameStatus.MEASURED && !frame.isFocusTest()
                        || frame.status() == FrameStatus.TOO_FEW_STARS)
            .count();
  }
}
