package rondure.report;

import java.util.List;
import java.util.Optional;
import rondure.base.RobustStats;
import rondure.blur.Budget;
import rondure.blur.Cause;
import rondure.blur.Terms;
import rondure.night.FrameCourse;
import rondure.night.FrameShape;
import rondure.night.NightFrame;
import rondure.night.Scene;
import rondure.report.picture.Mark;

/**
 * What curing one cause would be worth: how much narrower the stars of the frames that it softened
 * would be. By the blur budget 1 - √(1 - part / all); without one, the way to the sharpest tenth of
 * the scene. Of haze the share of the stars' light, where that is more.
 */
final class Worth {
  private final ReportContext context;

  Worth(ReportContext context) {
    this.context = context;
  }

  /** Sum over the frames: many frames and much softness both count. */
  double total(Mark mark) {
    return softened(mark).stream().mapToDouble(frame -> gain(frame, mark)).sum();
  }

  /** Median over the frames, a share. */
  double typical(Mark mark) {
    return RobustStats.median(
        softened(mark).stream().mapToDouble(frame -> gain(frame, mark)).toArray());
  }

  private List<NightFrame> softened(Mark mark) {
    return context.measured().stream()
        .filter(frame -> frame.verdict().isPresent() && Mark.of(frame) == mark)
        .filter(frame -> !frame.isFocusTest())
        .toList();
  }

  private double gain(NightFrame frame, Mark mark) {
    double narrower =
        mark == Mark.UNDECIDED
            ? toSharpest(frame)
            : frame.budget().map(b -> byBudget(b, mark)).orElseGet(() -> toSharpest(frame));
    return mark == Mark.HAZE ? Math.max(narrower, lightLost(frame)) : narrower;
  }

  private static double byBudget(Budget budget, Mark mark) {
    Terms terms = mark == Mark.LENS ? budget.edge() : budget.sky();
    double all = terms.corePx2() + terms.excessPx2();
    double part = Math.max(0, terms.of(Cause.valueOf(mark.name())));
    return 1 - Math.sqrt(Math.max(0, 1 - Math.min(1, part / all)));
  }

  private double toSharpest(NightFrame frame) {
    Optional<Double> sharpest =
        context.book().scenes().stream()
            .filter(scene -> frame.sceneNumber().equals(Optional.of(scene.number())))
            .findFirst()
            .flatMap(Scene::sharpestFwhmPx);
    double width = frame.shape().map(FrameShape::fwhmPx).orElse(0.0);
    return sharpest.filter(px -> px < width).map(px -> 1 - px / width).orElse(0.0);
  }

  /** 2.5 log10 of the light ratio is the loss in magnitudes (Pogson 1856). */
  private static double lightLost(NightFrame frame) {
    double mag = frame.course().flatMap(FrameCourse::lightLostMag).orElse(0.0);
    return 1 - Math.pow(10, -0.4 * Math.max(0, mag));
  }
}
