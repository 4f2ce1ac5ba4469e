package rondure.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import rondure.blur.Cause;
import rondure.night.FrameStatus;
import rondure.report.picture.Mark;

/** What to do next time: what would gain most, with numbers where the night gives them. */
final class Advice {
  private static final int MOST = 3;

  private Advice() {}

  /** At most three points, the worthiest first: over all frames, how much narrower stars get. */
  static List<AdvicePoint> of(ReportContext context, Map<Mark, Integer> tally) {
    List<AdvicePoint> advice = new ArrayList<>();
    Worth worth = new Worth(context);
    CauseAdvice causes = new CauseAdvice(context, shorterExposure(context, tally));
    if (!tally.containsKey(Mark.TRAILING)) {
      causes.shorter().ifPresent(advice::add);
    }
    tally.entrySet().stream()
        .filter(entry -> entry.getKey() != Mark.NONE)
        .sorted(
            Comparator.comparingDouble((Map.Entry<Mark, Integer> e) -> -worth.total(e.getKey()))
                .thenComparing(Map.Entry::getKey))
        .forEach(entry -> advice.add(causes.counted(entry.getKey(), entry.getValue())));
    notKept(context).ifPresent(advice::add);
    advice.addAll(new EventAdvice(context).besides(tally));
    if (context.measured().stream().anyMatch(frame -> frame.trailPredictedPx().isEmpty())) {
      advice.add(AdvicePoint.of(context.words(), "advice.facts"));
    }
    if (advice.isEmpty()) {
      String key = context.measured().isEmpty() ? nothing(context) : calm(tally);
      advice.add(AdvicePoint.of(context.words(), key));
    }
    return List.copyOf(advice.subList(0, Math.min(MOST, advice.size())));
  }

  /**
   * Of frames that are not kept though no cause softened it much: against what adds most to them.
   */
  private static Optional<AdvicePoint> notKept(ReportContext context) {
    Map<Cause, Long> parts =
        context.measured().stream()
            .filter(LargestPart::isSpareable)
            .collect(
                Collectors.groupingBy(
                    frame -> LargestPart.of(frame).orElse(Cause.NONE), Collectors.counting()));
    return parts.entrySet().stream()
        .max(
            Map.Entry.<Cause, Long>comparingByValue()
                .thenComparing(Map.Entry.comparingByKey(Comparator.reverseOrder())))
        .map(entry -> notKept(context, entry.getKey(), entry.getValue().intValue()));
  }

  private static AdvicePoint notKept(ReportContext context, Cause cause, int frames) {
    String count = context.words().count("count.frame", frames);
    if (cause == Cause.NONE) {
      return AdvicePoint.of(context.words(), "advice.notKept.open", "frames", count);
    }
    String name = context.words().say("glance.cause." + Mark.of(cause));
    String why = context.words().say("advice.notKept", "frames", count, "cause", name);
    return new CauseAdvice(context, ShorterExposure.of(context))
        .against(Mark.of(cause))
        .because(why);
  }

  private static String calm(Map<Mark, Integer> tally) {
    return tally.isEmpty() ? "advice.unexplained" : "advice.NONE";
  }

  /** What to do when nothing was measured: files that cannot be read are no matter of light. */
  private static String nothing(ReportContext context) {
    boolean unreadable =
        context.book().frames().stream().allMatch(f -> f.status() == FrameStatus.UNREADABLE);
    return unreadable ? "advice.unreadable" : "advice.nothing";
  }

  /** Where trails or open causes are among what softened the frames. */
  private static Optional<AdvicePoint> shorterExposure(
      ReportContext context, Map<Mark, Integer> tally) {
    return tally.containsKey(Mark.TRAILING) || tally.containsKey(Mark.UNDECIDED)
        ? ShorterExposure.of(context)
        : Optional.empty();
  }
}
