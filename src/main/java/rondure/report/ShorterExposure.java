package rondure.report;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import rondure.base.RobustStats;
import rondure.blur.Cause;
import rondure.blur.Verdict;
import rondure.intake.Fact;
import rondure.night.NightFrame;
import rondure.night.Scene;
import rondure.report.picture.Mark;

/** The exposure that would have kept trails within the stars' own width. */
final class ShorterExposure {
  private ShorterExposure() {}

  /**
   * The exposure at which the trail equals the stars' own width, for the scene with the most frames
   * that the sky may have trailed beyond it (the first of these): the trail grows in proportion to
   * the exposure.
   */
  static Optional<AdvicePoint> of(ReportContext context) {
    Map<Scene, List<NightFrame>> trailed = new LinkedHashMap<>();
    context.book().scenes().forEach(scene -> trailed.put(scene, trailed(context, scene)));
    return trailed.entrySet().stream()
        .sorted(Comparator.comparingInt(entry -> -entry.getValue().size()))
        .map(entry -> of(context, entry.getKey(), entry.getValue()))
        .flatMap(Optional::stream)
        .findFirst();
  }

  private static List<NightFrame> trailed(ReportContext context, Scene scene) {
    return Ranking.bestFirst(context.book(), scene).stream()
        .filter(frame -> frame.trailPredictedPx().isPresent())
        .filter(frame -> frame.facts().exposureSeconds().isPresent())
        .filter(ShorterExposure::mayTrail)
        .toList();
  }

  private static Optional<AdvicePoint> of(
      ReportContext context, Scene scene, List<NightFrame> softened) {
    Optional<Double> ownWidth = SceneFigures.of(context.book(), scene).ownWidthPx();
    if (softened.isEmpty() || ownWidth.isEmpty()) {
      return Optional.empty();
    }
    double trailPx = median(softened, frame -> frame.trailPredictedPx().orElseThrow());
    double exposureSeconds =
        median(softened, frame -> frame.facts().exposureSeconds().map(Fact::value).orElseThrow());
    double widthPx = ownWidth.get();
    double shorterSeconds = exposureSeconds * widthPx / trailPx;
    if (!(shorterSeconds < 0.9 * exposureSeconds)) {
      return Optional.empty();
    }
    return Optional.of(
        AdvicePoint.of(
            context.words(),
            "advice.shorter",
            "exposure",
            Figures.exposure(exposureSeconds),
            "trail",
            Figures.px(trailPx),
            "shorter",
            Figures.aboutExposure(
                shorterSeconds >= 2 ? Math.floor(shorterSeconds) : shorterSeconds),
            "width",
            Figures.px(widthPx)));
  }

  private static boolean mayTrail(NightFrame frame) {
    Mark mark = Mark.of(frame);
    boolean little =
        LargestPart.isSpareable(frame) && LargestPart.of(frame).equals(Optional.of(Cause.TRAILING));
    return mark == Mark.TRAILING || mark == Mark.UNDECIDED && standsBesideTrailing(frame) || little;
  }

  private static boolean standsBesideTrailing(NightFrame frame) {
    return frame
        .verdict()
        .map(Verdict::undecidedBetween)
        .filter(between -> between.isEmpty() || between.contains(Cause.TRAILING))
        .isPresent();
  }

  private static double median(List<NightFrame> frames, ToDoubleFunction<NightFrame> value) {
    return RobustStats.median(frames.stream().mapToDouble(value).toArray());
  }
}
