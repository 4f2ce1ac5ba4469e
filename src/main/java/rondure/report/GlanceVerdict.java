package rondure.report;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rondure.night.GradeReason;
import rondure.night.NightFrame;
import rondure.night.OutputUse;
import rondure.report.picture.Mark;

/** The first sentence of the report: how many frames to keep, and what spoiled the rest. */
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
                : kept == measured ? "all" : kept == 0 ? "nothing" : "some";
    String rest = measured == 1 ? cause(ofTheNight.get(0)) : rest(ofTheNight, kept);
    return context
        .words()
        .say(
            "glance.verdict." + key,
            "counted",
            counted(ofTheNight.size()),
            "measured",
            Integer.toString(measured),
            "kept",
            Integer.toString(kept),
            "sharp",
            sharp(kept),
            "rest",
            rest);
  }

  /** How many of the kept frames are sharp at full size. */
  private String sharp(int kept) {
    int full =
        (int)
            context.book().frames().stream()
                .filter(Ranking::isKeep)
                .filter(f -> f.usefulness().filter(GlanceVerdict::isFullSize).isPresent())
                .count();
    String key = full == 0 ? "none" : full == kept ? (kept == 1 ? "it" : "all") : "some";
    return context.words().say("glance.sharp." + key, "count", Integer.toString(full));
  }

  private static boolean isFullSize(rondure.night.Usefulness use) {
    return use.largestUse() == OutputUse.FULL_SIZE;
  }

  /**
   * What spoiled most of those that are not kept; where nothing did by much, why they are not.
   *
   * @param measured measured frames, those of focus tests aside
   */
  private String rest(List<NightFrame> measured, int kept) {
    List<NightFrame> others = measured.stream().filter(f -> !Ranking.isKeep(f)).toList();
    List<Mark> marks =
        others.stream()
            .filter(MainEvent::isLost)
            .map((NightFrame frame) -> Mark.of(frame))
            .toList();
    Optional<Mark> worst = commonest(marks.stream().filter(mark -> mark != Mark.NONE));
    if (worst.isPresent()) {
      long count = marks.stream().filter(mark -> mark == worst.get()).count();
      boolean isMost = 2 * count >= others.size();
      return spoiled(worst.get(), kept, others.size(), isMost);
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

  private String spoiled(Mark worst, int kept, int others, boolean isMost) {
    String who = "glance.who." + (kept == 0 ? "they" : "rest");
    if (worst == Mark.UNDECIDED) {
      return context.words().say("glance.rest.UNDECIDED" + (isMost ? "" : ".often"));
    }
    String degree = kept > 0 && others == 1 ? "one" : isMost ? "mainly" : "often";
    return context
        .words()
        .say(
            "glance.rest." + degree,
            "who",
            context.words().say(who),
            "what",
            MainEvent.words(context, worst));
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

  /** For a lone frame: what its entry says. */
  private String cause(NightFrame frame) {
    return new CauseWords(context.words()).heading(frame) + ".";
  }

  /**
   * "12 frames" where every frame was measured, else "10 measured frames": the bar has them all.
   */
  private String counted(int measured) {
    long all = context.book().frames().stream().filter(frame -> !frame.isFocusTest()).count();
    return context.words().count(all == measured ? "count.frame" : "count.measured", measured);
  }
}
