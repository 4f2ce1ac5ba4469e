package rondure.report;

import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import rondure.report.picture.Mark;

/**
 * What to do against one cause.
 *
 * @param context the night
 * @param shorter the exposure that would keep trails short, where trails matter
 */
record CauseAdvice(ReportContext context, Optional<AdvicePoint> shorter) {
  /** Less is not worth a number. */
  private static final double LEAST_GAIN = 0.05;

  /** Against what softened so many frames, with what that would gain. */
  AdvicePoint counted(Mark mark, int frames) {
    return against(mark).because(gain(mark, context.words().count("count.frame", frames)));
  }

  private String gain(Mark mark, String frames) {
    if (mark == Mark.UNDECIDED) {
      return context.words().say("advice.counted.UNDECIDED", "frames", frames);
    }
    double gain = new Worth(context).typical(mark);
    String percent = Figures.percent(gain);
    if (gain < LEAST_GAIN) {
      String what = context.words().say("glance.what." + mark);
      return context.words().say("advice.counted", "frames", frames, "what", what);
    }
    if (mark == Mark.HAZE) {
      return context.words().say("advice.counted.light", "frames", frames, "gain", percent);
    }
    String without = context.words().say("advice.without." + mark);
    return context
        .words()
        .say("advice.counted.gain", "frames", frames, "gain", percent, "without", without);
  }

  /** With numbers of this night where it gives them. */
  AdvicePoint against(Mark mark) {
    Optional<AdvicePoint> numbered =
        switch (mark) {
          case TRAILING -> shorter;
          case LENS -> stopDown();
          default -> new EventAdvice(context).against(mark);
        };
    return numbered.orElseGet(() -> AdvicePoint.of(context.words(), key(mark)));
  }

  /** Of the scene with most frames that the lens softened. */
  private Optional<AdvicePoint> stopDown() {
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
  private String key(Mark mark) {
    if (mark == Mark.UNDECIDED) {
      return undecidedKey();
    }
    String mounted = "advice." + mark + ".mount";
    boolean mostly = count(mark, true) > count(mark, false);
    return mostly && context.words().has(mounted) ? mounted : "advice." + mark;
  }

  /** By what most of the open frames stand between: half the exposure settles trails only. */
  private String undecidedKey() {
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

  private long count(Mark mark, boolean mounted) {
    return context.book().scenes().stream()
        .filter(scene -> scene.isMounted() == mounted)
        .flatMap(scene -> scene.frames().stream())
        .filter(index -> Mark.of(context.book().frames().get(index)) == mark)
        .count();
  }
}
