package rondure.report;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rondure.night.FrameStatus;
import rondure.night.GradeReason;
import rondure.night.NightFrame;
import rondure.report.picture.Mark;

/** The first sentences of the report: how many frames to keep, and what softened the rest. */
final class GlanceVerdict {
  private final ReportContext context;

  GlanceVerdict(ReportContext context) {
    this.context = context;
  }

  String sentence() {
    List<NightFrame> ofTheNight =
        context.measured().stream().filter(f -> !f.isFocusTest()).toList();
    int measured = ofTheNight.size();
    int kept = context.kept();
    String key =
        measured == 0
            ? (context.measured().isEmpty() ? "none" : "onlyTests")
            : measured == 1
                ? (kept == 1 ? "singleKept" : "single")
                : kept == measured ? "all" : several(kept);
    String rest = measured == 1 ? cause(ofTheNight.get(0)) : rest(ofTheNight);
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

  /**
   * What softened most of those that are not kept; where nothing did by much, why they are not.
   *
   * @param measured measured frames, those of focus tests aside
   */
  private String rest(List<NightFrame> measured) {
    List<NightFrame> others = measured.stream().filter(f -> !Ranking.isKeep(f)).toList();
    Optional<Mark> worst =
        commonest(
            others.stream()
                .filter(frame -> frame.verdict().isPresent())
                .map((NightFrame frame) -> Mark.of(frame))
                .filter(mark -> mark != Mark.NONE));
    if (worst.isPresent()) {
      return context.words().say("glance.rest." + worst.get());
    }
    if (!measured.stream().allMatch(frame -> frame.verdict().isPresent())) {
      return context.words().say("glance.rest.UNEXPLAINED");
    }
    Stream<GradeReason> reasons =
        others.stream()
            .flatMap(frame -> frame.graded().stream())
            .map(graded -> graded.why().get(0).reason());
    Optional<GradeReason> reason = commonest(reasons);
    return context.words().say("glance.rest." + reason.map(r -> "notKept." + r).orElse("NONE"));
  }

  /** Of as many the first in the order of declaration. */
  private static <E extends Enum<E>> Optional<E> commonest(Stream<E> all) {
    Map<E, Long> counts = all.collect(Collectors.groupingBy(e -> e, Collectors.counting()));
    return counts.entrySet().stream()
        .max(
            Map.Entry.<E, Long>comparingByValue()
                .thenComparing(Map.Entry.comparingByKey(Comparator.reverseOrder())))
        .map(Map.Entry::getKey);
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
