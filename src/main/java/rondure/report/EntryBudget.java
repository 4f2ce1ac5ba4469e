package rondure.report;

import java.util.List;
import rondure.blur.Terms;
import rondure.night.FrameShape;
import rondure.night.NightFrame;
import rondure.night.Scene;
import rondure.report.picture.BudgetBar;
import rondure.report.picture.BudgetPart;

/** The blur budget of one frame's entry, as a bar on the scene's scale. */
final class EntryBudget {
  private static final long WIDTH = 330;

  /** Wider stars' bars are torn off, so that those of the sharpest frames stay readable. */
  private static final double MOST_TIMES_SHARPEST = 3.5;

  /** A budget of so much more than the shapes' second moment holds a path beside them. */
  private static final double PATH_FROM = 1.6;

  private final ReportContext context;

  EntryBudget(ReportContext context) {
    this.context = context;
  }

  /** The bar, where there is a budget. */
  List<PictureView> picture(NightFrame frame, Scene scene, int position) {
    if (frame.budget().isEmpty()) {
      return List.of();
    }
    Terms terms = frame.budget().get().sky();
    List<BudgetPart> parts = BudgetPart.of(terms);
    FrameShape shape = frame.shape().orElseThrow();
    double beyond = beyondShapes(parts, shape);
    double wide = shape.fwhmPx() * beyond;
    String label =
        context
            .words()
            .say(
                beyond > 1 ? "picture.budget.whole" : "picture.budget.width",
                "px",
                Figures.px(wide));
    BudgetBar bar = new BudgetBar(parts, wide, label, fullPx(scene), context.words());
    String name = "budget-" + position;
    context.pictures().add(name, bar);
    String alt =
        context
            .words()
            .say(
                "alt.budget",
                "width",
                Figures.px(wide),
                "terms",
                BudgetWords.shares(terms, context.words()));
    return List.of(new PictureView(name, alt, WIDTH, (long) Math.ceil(bar.heightFor(WIDTH))));
  }

  /**
   * How much wider the whole path of a knocked camera is than a star's single image; 1 where a star
   * is all there is.
   */
  private static double beyondShapes(List<BudgetPart> parts, FrameShape shape) {
    double all = parts.stream().mapToDouble(BudgetPart::px2).sum();
    double seen = shape.rmsWidthPx() * shape.rmsWidthPx();
    return seen > 0 && all > PATH_FROM * seen ? Math.sqrt(all / seen) : 1;
  }

  /** The widest stars of the scene's frames with a budget, within the limit. */
  private double fullPx(Scene scene) {
    double widest =
        scene.frames().stream()
            .map(context.book().frames()::get)
            .filter(frame -> frame.budget().isPresent())
            .flatMap(frame -> frame.shape().stream())
            .mapToDouble(FrameShape::fwhmPx)
            .max()
            .orElse(1);
    return Math.min(widest, MOST_TIMES_SHARPEST * context.referenceFwhmPx(scene));
  }
}
