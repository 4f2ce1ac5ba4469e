package rondure.blur;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rondure.base.Moments;
import rondure.sky.FrameSky;
import rondure.sky.Spin;

/** Writes the budgets of a solved scene. */
final class BudgetBooks {
  /** Round part over spin-2 of a swing whose short axis has three quarters of the long one. */
  private static final double MOST_ROUND = 4;

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

  /** The lens it books by. */
  LensFinding lens(double share) {
    return new LensFinding(solution.lens(), LensDoubt.of(solution, bootstrap.sharedSteps()), share);
  }

  ExplainedShare explained() {
    return explained;
  }

  /**
   * What is known of a frame besides its solution.
   *
   * @param sky how well its motion is known
   * @param exposure how well its exposure is known
   * @param pathPx2 what the camera's path adds beyond the shapes of single stars
   * @param pathErrorPx2 its standard error
   * @param developed whether its file was developed
   */
  record Known(
      FrameSky sky,
      ExposureReading exposure,
      double pathPx2,
      double pathErrorPx2,
      boolean developed) {

    /** Standard error of the trail's moments over these: they grow as rate and time squared. */
    double trailErrorShare() {
      double rate = sky.starSpin().map(Spin::rateRadPerS).orElse(0.0);
      double ofRate = rate > 0 ? 2 * sky.spinErrorRadPerS() / rate : 0;
      return Math.hypot(ofRate, exposure.trailErrorShare());
    }
  }

  /** One frame's budget. */
  Budget budget(int k, Known known) {
    Booking booking = booking(k);
    double[] predicted = solution.predicted(k);
    Terms all = withPath(booking.sky(predicted), known.pathPx2());
    Terms edge = withPath(booking.edge(predicted), known.pathPx2());
    return new Budget(
        all,
        edge,
        withMotionError(bootstrap.errors(k), all, known),
        booking.trailPx(),
        Math.abs(booking.meanDiscPx()),
        Math.hypot(booking.tripodRmsPx(), Math.sqrt(2 * known.pathPx2())),
        explained.frame(k),
        conditions.of(k),
        known.developed(),
        Optional.of(FrameBlur.of(solution, k)));
  }

  private Booking booking(int k) {
    return new Booking(solution.models().get(k), solution.shared(), solution.own(k));
  }

  private static Terms withPath(Terms terms, double pathPx2) {
    return new Terms(
        terms.corePx2(),
        terms.focusPx2(),
        terms.trailingPx2(),
        terms.tripodPx2() + pathPx2,
        terms.lensPx2(),
        terms.hazePx2(),
        terms.unexplainedPx2());
  }

  /**
   * The sky's part errs with its motion, and what is left over for the tripod with it and with its
   * path.
   */
  private static Terms withMotionError(Terms errors, Terms all, Known known) {
    double ofTrail = known.trailErrorShare() * all.trailingPx2();
    return new Terms(
        errors.corePx2(),
        errors.focusPx2(),
        ofTrail,
        Math.hypot(Math.hypot(errors.tripodPx2(), ofTrail), known.pathErrorPx2()),
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
    double trade = Math.min(round, conditions.roundErrorPx2(k));
    return Math.min(trade, mostRoundPx2(solution.shake(k)));
  }

  /**
   * What may be round of a shake that is not seen to be stretched: swings are never quite round.
   */
  private static double mostRoundPx2(Shake shake) {
    return shake.proven()
        ? Double.POSITIVE_INFINITY
        : MOST_ROUND * (shake.spin2Px2() + 2 * shake.errorPx2());
  }
}
