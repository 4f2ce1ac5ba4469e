package rondure.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rondure.base.RobustStats;
import rondure.intake.Fact;
import rondure.night.FrameStatus;
import rondure.night.NightFrame;
import rondure.night.Scene;
import rondure.report.picture.Mark;

/** What to do next time, from the commonest causes, with numbers where the night gives them. */
final class Advice {
  private static final int MOST = 3;

  private Advice() {}

  /** At most three sentences, the commonest cause first. */
  static List<String> of(ReportContext context, Map<Mark, Integer> tally) {
    List<String> advice = new ArrayList<>();
    Optional<String> shorter = shorterExposure(context, tally);
    if (!tally.containsKey(Mark.TRAILING)) {
      shorter.ifPresent(advice::add);
    }
    tally.entrySet().stream()
        .filter(entry -> entry.getKey() != Mark.NONE)
        .sorted(
            Comparator.comparing(Map.Entry<Mark, Integer>::getValue)
                .reversed()
                .thenComparing(Map.Entry::getKey))
        .forEach(entry -> advice.add(counted(context, entry, shorter)));
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
    String general = context.words().say(key(context, entry.getKey()));
    return context
        .words()
        .say(
            "advice.counted",
            "frames",
            context.words().count("count.frame", entry.getValue()),
            "cause",
            context.words().say("glance.cause." + entry.getKey()),
            "advice",
            entry.getKey() == Mark.TRAILING ? shorter.orElse(general) : general);
  }

  /** What moves on a mount is not helped by what helps a tripod. */
  private static String key(ReportContext context, Mark mark) {
    String mounted = "advice." + mark + ".mount";
    long onMount = count(context, mark, true);
    boolean mostly = onMount > count(context, mark, false);
    return mostly && context.words().has(mounted) ? mounted : "advice." + mark;
  }

  private static long count(ReportContext context, Mark mark, boolean mounted) {
    return context.book().scenes().stream()
        .filter(scene -> scene.isMounted() == mounted)
        .flatMap(scene -> scene.frames().stream())
        .filter(index -> Mark.of(context.book().frames().get(index)) == mark)
        .count();
  }

  /**
   * The exposure at which the longest trail equals the sharpest stars' own width, for the scene
   * where the sky may have trailed most: the trail grows in proportion to the exposure.
   */
  private static Optional<String> shorterExposure(ReportContext context, Map<Mark, Integer> tally) {
    if (!tally.containsKey(Mark.TRAILING) && !tally.containsKey(Mark.UNDECIDED)) {
      return Optional.empty();
    }
    return context.book().scenes().stream()
        .map(scene -> shorterExposure(context, scene))
        .flatMap(Optional::stream)
        .findFirst();
  }

  private static Optional<String> shorterExposure(ReportContext context, Scene scene) {
    List<NightFrame> softened =
        Ranking.bestFirst(context.book(), scene).stream()
            .filter(frame -> frame.trailPredictedPx().isPresent())
            .filter(frame -> frame.facts().exposureSeconds().isPresent())
            .filter(frame -> Mark.of(frame) == Mark.TRAILING || Mark.of(frame) == Mark.UNDECIDED)
            .toList();
    if (softened.isEmpty() || scene.sharpestFwhmPx().isEmpty()) {
      return Optional.empty();
    }
    double trailPx = median(softened, frame -> frame.trailPredictedPx().orElseThrow());
    double exposureSeconds =
        median(softened, frame -> frame.facts().exposureSeconds().map(Fact::value).orElseThrow());
    double widthPx = scene.sharpestFwhmPx().get();
    double shorterSeconds = exposureSeconds * widthPx / trailPx;
    if (!(shorterSeconds < 0.9 * exposureSeconds)) {
      return Optional.empty();
    }
    return Optional.of(
        context
            .words()
            .say(
                "advice.shorter",
                "exposure",
                Figures.exposure(exposureSeconds),
                "trail",
                Figures.px(trailPx),
                "shorter",
                Figures.exposure(shorterSeconds >= 2 ? Math.floor(shorterSeconds) : shorterSeconds),
                "width",
                Figures.px(widthPx)));
  }

  private static double median(
      List<NightFrame> frames, java.util.function.ToDoubleFunction<NightFrame> value) {
    return RobustStats.median(frames.stream().mapToDouble(value).toArray());
  }
}
