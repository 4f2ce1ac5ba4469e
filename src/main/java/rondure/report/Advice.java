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

  /** Less is not worth a number. */
  private static final double LEAST_GAIN = 0.05;

  /** At most three points, the worthiest first: over all frames, how much narrower stars get. */
  static List<String> of(ReportContext context, Map<Mark, Integer> tally) {
    List<String> advice = new ArrayList<>();
    Worth worth = new Worth(context);
    Optional<String> shorter = shorterExposure(context, tally);
    if (!tally.containsKey(Mark.TRAILING)) {
      shorter.ifPresent(advice::add);
    }
    tally.entrySet().stream()
        .filter(entry -> entry.getKey() != Mark.NONE)
        .sorted(
            Comparator.comparingDouble((Map.Entry<Mark, Integer> e) -> -worth.total(e.getKey()))
                .thenComparing(Map.Entry::getKey))
        .forEach(entry -> advice.add(counted(context, entry, shorter)));
    notKept(context).ifPresent(advice::add);
    advice.addAll(new EventAdvice(context).besides(tally));
    boolean unknownTrail =
        context.measured().stream().anyMatch(frame -> frame.trailPredictedPx().isEmpty());
    if (unknownTrail) {
      advice.add(context.words().say("advice.facts"));
    }
    if (advice.isEmpty()) {
      advice.add(
          context.words().say(context.measured().isEmpty() ? nothing(context) : calm(tally)));
    }
    return List.copyOf(advice.subList(0, Math.min(MOST, advice.size())));
  }

  /**
   * Of frames that are not kept though no cause softened it much: against what adds most to them.
   */
  private static Optional<String> notKept(ReportContext context) {
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

  private static String notKept(ReportContext context, Cause cause, int frames) {
    Mark mark = Mark.of(cause);
    String against =
        numbered(context, mark, ShorterExposure.of(context))
            .orElseGet(() -> context.words().say(key(context, mark)));
    return context
        .words()
        .say(
            cause == Cause.NONE ? "advice.notKept.open" : "advice.notKept",
            "frames",
            context.words().count("count.frame", frames),
            "cause",
            context.words().say("glance.cause." + mark),
            "advice",
            against);
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

  private static String counted(
      ReportContext context, Map.Entry<Mark, Integer> entry, Optional<String> shorter) {
    Mark mark = entry.getKey();
    double gain = new Worth(context).typical(mark);
    boolean tells = mark != Mark.UNDECIDED && gain >= LEAST_GAIN;
    return context
        .words()
        .say(
            tells ? "advice.counted." + (mark == Mark.HAZE ? "light" : "gain") : "advice.counted",
            "frames",
            context.words().count("count.frame", entry.getValue()),
            "cause",
            context.words().say("glance.cause." + mark),
            "gain",
            Figures.percent(gain),
            "advice",
            numbered(context, mark, shorter)
                .orElseGet(() -> context.words().say(key(context, mark))));
  }

  /** What to do, with numbers of this night; empty where it gives none. */
  private static Optional<String> numbered(
      ReportContext context, Mark mark, Optional<String> shorter) {
    return switch (mark) {
      case TRAILING -> shorter;
      case LENS -> stopDown(context);
      default -> new EventAdvice(context).against(mark);
    };
  }

  /** Of the scene with most frames that the lens softened. */
  private static Optional<String> stopDown(ReportContext context) {
    return context.book().scenes().stream()
        .max(
            Comparator.comparingLong(
                scene ->
                    scene.frames().stream()
                        .filter(i -> Mark.of(context.book().frames().get(i)) == Mark.LENS)
                        .count()))
        .flatMap(scene -> StopDown.advice(SceneFigures.of(context.book(), scene), context.words()));
  }

  /** What moves on a mount is not helped by what helps a tripod. */
  private static String key(ReportContext context, Mark mark) {
    if (mark == Mark.UNDECIDED) {
      return undecidedKey(context);
    }
    String mounted = "advice." + mark + ".mount";
    long onMount = count(context, mark, true);
    boolean mostly = onMount > count(context, mark, false);
    return mostly && context.words().has(mounted) ? mounted : "advice." + mark;
  }

  /** By what most of the open frames stand between: half the exposure settles trails only. */
  private static String undecidedKey(ReportContext context) {
    Map<String, Long> keys =
        context.measured().stream()
            .filter(frame -> Mark.of(frame) == Mark.UNDECIDED)
            .flatMap(frame -> frame.verdict().stream())
            .map(verdict -> CauseWords.undecidedAction(verdict.undecidedBetween()))
            .collect(Collectors.groupingBy(key -> key, Collectors.counting()));
    return keys.entrySet().stream()
        .max(
            Map.Entry.<String, Long>comparingByValue()
                .thenComparing(Map.Entry.comparingByKey(Comparator.reverseOrder())))
        .map(Map.Entry::getKey)
        .filter(key -> !key.equals("action.UNDECIDED"))
        .orElse("advice.UNDECIDED");
  }

  private static long count(ReportContext context, Mark mark, boolean mounted) {
    return context.book().scenes().stream()
        .filter(scene -> scene.isMounted() == mounted)
        .flatMap(scene -> scene.frames().stream())
        .filter(index -> Mark.of(context.book().frames().get(index)) == mark)
        .count();
  }

  /** Where trails or open causes are among what softened the frames. */
  private static Optional<String> shorterExposure(ReportContext context, Map<Mark, Integer> tally) {
    return tally.containsKey(Mark.TRAILING) || tally.containsKey(Mark.UNDECIDED)
        ? ShorterExposure.of(context)
        : Optional.empty();
  }
}
