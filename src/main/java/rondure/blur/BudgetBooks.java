package rondure.blur;

import java.util.ArrayList;
import java.util.List;
import rondure.base.Moments;
import rondure.sky.FrameSky;

/** Writes the budgets of a solved scene. */
final class BudgetBooks {
  private final SceneSolution solution;
  private final BlockBootstrap bootstrap;
  private final ExplainedShare explained;
  private final Conditions conditions;

  BudgetBooks(SceneSolution solution) {
    this.solution = solution;
    bootstrap = new BlockBootstrap(solution);
    conditions = new Conditions(solution);
    List<double[]> predicted = new ArrayList<>();
    for (int k = 0; k < solution.models().size(); k++) {
      predicted.add(solution.predicted(k));
    }
    explained = ExplainedShare.of(solution.models(), predicted);
  }

  ExplainedShare explained() {
    return explained;
  }

  /**
   * One frame's budget.
   *
   * @param sky how well its motion is known
   */
  Budget budget(int k, FrameSky sky, boolean developed) {
    Booking booking = booking(k);
    double[] predicted = solution.predicted(k);
    Terms all = booking.sky(predicted);
    Terms edge = booking.edge(predicted);
    return new Budget(
        all,
        edge,
        withMotionError(bootstrap.errors(k), all, sky),
        booking.trailPx(),
        Math.abs(booking.meanDiscPx()),
        booking.tripodRmsPx(),
        explained.frame(k),
        conditions.of(k),
        developed);
  }

  private Booking booking(int k) {
    return new Booking(solution.models().get(k), solution.shared(), solution.own(k));
  }

  /** The sky's part errs as the square of its rate does. */
  private static Terms withMotionError(Terms errors, Terms all, FrameSky sky) {
    double rate = sky.starSpin().map(spin -> spin.rateRadPerS()).orElse(0.0);
    double relative = rate > 0 ? 2 * sky.spinErrorRadPerS() / rate : 0;
    return new Terms(
        errors.corePx2(),
        errors.focusPx2(),
        relative * all.trailingPx2(),
        Math.hypot(errors.tripodPx2(), relative * all.trailingPx2()),
        errors.lensPx2(),
        errors.hazePx2(),
        errors.unexplainedPx2());
  }

  double meanDiscPx(int k) {
    return booking(k).meanDiscPx();
  }

  double meanDiscErrorPx(int k) {
    return conditions.discErrorPx(k);
  }

  UniformSmear smear(int k) {
    double[] own = solution.own(k);
    Moments stretch =
        new Moments(own[FrameModel.ALONG], own[FrameModel.DIAGONAL], -own[FrameModel.ALONG]);
    Shake shake = solution.shake(k);
    return new UniformSmear(
        stretch.spin2Px2(), shake.errorPx2(), stretch.positionAngleRad(), shake.proven());
  }

  /** See {@link FrameBudget}. */
  double tradeablePx2(int k) {
    double[] own = solution.own(k);
    double needed = Math.hypot(own[FrameModel.ALONG], own[FrameModel.DIAGONAL]);
    double round = booking(k).focusPx2() + Math.max(0, own[FrameModel.SHAKE] - needed);
    return Math.min(round, conditions.roundErrorPx2(k));
  }
}
