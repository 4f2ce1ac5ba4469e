package rondure.evaluation;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import rondure.blur.Calibration;
import rondure.blur.Cause;
import rondure.blur.Ground;

/**
 * Fits calibrations by the logarithmic score, causes weighing alike: mean of -log of the
 * probability of the true cause (Good 1952, Journal of the Royal Statistical Society B 14, 107).
 * Frames of a night fail together, so nights are counted: beside those seen, one more has failed
 * wholly (Laplace's rule of succession), and crosswise scores leave whole nights out.
 *
 * <p>Odds may be sharpened, by a power of 1.4 at most as nights are few. In lone frames, whose
 * light nothing can be compared with, haze that nothing shows is left out of the cases; so that it
 * is not denied the more surely, half of what counting it would move there stays with it.
 */
final class CalibrationFit {
  private static final double[] POWERS = {0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.2, 1.4};
  private static final Set<Ground> ALONE = EnumSet.of(Ground.LONE, Ground.LONE_NO_EXPOSURE);
  private static final int ALONE_HAZE_STEPS = 9;
  private static final double STEP = 0.02;
  private static final int HAZE_STEPS = 30;
  private static final int STRAY_STEPS = 20;
  private static final int FOLDS = 5;

  private CalibrationFit() {}

  /** The odds of a frame's causes and the true one. */
  record Case(Ground ground, String night, Cause truth, Map<Cause, Double> odds) {}

  private static int leastHazeSteps(List<Case> cases) {
    return cases.stream().map(Case::ground).allMatch(ALONE::contains) ? ALONE_HAZE_STEPS : 0;
  }

  /** The likeliest on a grid. */
  static Calibration fit(List<Case> cases) {
    int leastHaze = leastHazeSteps(cases);
    Map<Case, Double> weights = weights(cases);
    Calibration best = null;
    double least = Double.POSITIVE_INFINITY;
    for (double power : POWERS) {
      List<double[]> powered = powered(cases, weights, power);
      for (int haze = leastHaze; haze <= HAZE_STEPS; haze++) {
        for (int stray = 1; stray <= STRAY_STEPS; stray++) {
          double loss = loss(powered, haze * STEP, stray * STEP) + failing(cases, stray * STEP);
          if (loss < least) {
            least = loss;
            best = new Calibration(power, rounded(haze * STEP), rounded(stray * STEP));
          }
        }
      }
    }
    return best;
  }

  private static double rounded(double share) {
    return Math.rint(share * 100) / 100;
  }

  /** What is fitted: the score and the night that failed. */
  static double penalised(List<Case> cases, Calibration calibration) {
    return score(cases, calibration) + failing(cases, calibration.strayShare());
  }

  private static double failing(List<Case> cases, double strayShare) {
    long nights = cases.stream().map(Case::night).distinct().count();
    return -Math.log(strayShare / Cause.values().length) / nights;
  }

  static double score(List<Case> cases, Calibration calibration) {
    return mean(cases, c -> -Math.log(Math.max(1e-4, calibration.of(c.odds()).get(c.truth()))));
  }

  /** Each night judged by what all the other folds' nights teach. */
  static double crosswise(List<Case> cases) {
    List<String> nights = cases.stream().map(Case::night).distinct().sorted(BY_SEED).toList();
    Map<Case, Double> losses = new IdentityHashMap<>();
    for (int fold = 0; fold < FOLDS; fold++) {
      int out = fold;
      List<Case> held =
          cases.stream().filter(c -> nights.indexOf(c.night()) % FOLDS == out).toList();
      List<Case> rest =
          cases.stream().filter(c -> nights.indexOf(c.night()) % FOLDS != out).toList();
      Calibration fitted = fit(rest);
      held.forEach(c -> losses.put(c, -Math.log(fitted.of(c.odds()).get(c.truth()))));
    }
    return mean(cases, losses::get);
  }

  private static final Comparator<String> BY_SEED =
      Comparator.comparing(night -> night.substring(night.lastIndexOf(' ') + 1));

  private static double mean(List<Case> cases, ToDoubleFunction<Case> loss) {
    Map<Case, Double> weights = weights(cases);
    return cases.stream().mapToDouble(c -> weights.get(c) * loss.applyAsDouble(c)).sum();
  }

  /** Causes weigh alike; all together 1. */
  private static Map<Case, Double> weights(List<Case> cases) {
    Map<Cause, Integer> counts = new EnumMap<>(Cause.class);
    cases.forEach(c -> counts.merge(c.truth(), 1, Integer::sum));
    Map<Case, Double> weights = new IdentityHashMap<>();
    cases.forEach(c -> weights.put(c, 1.0 / counts.get(c.truth()) / counts.size()));
    return weights;
  }

  /** Weight, power of the true cause's odds and what of "none" would be added or taken. */
  private static List<double[]> powered(List<Case> cases, Map<Case, Double> weights, double power) {
    Calibration only = new Calibration(power, 0, 0);
    return cases.stream()
        .map(
            c -> {
              Map<Cause, Double> p = only.of(c.odds());
              double none = p.get(Cause.NONE);
              double moved = c.truth() == Cause.HAZE ? none : c.truth() == Cause.NONE ? -none : 0;
              return new double[] {weights.get(c), p.get(c.truth()), moved};
            })
        .toList();
  }

  private static double loss(List<double[]> powered, double haze, double stray) {
    double even = stray / Cause.values().length;
    return powered.stream()
        .mapToDouble(p -> -p[0] * Math.log((1 - stray) * (p[1] + haze * p[2]) + even))
        .sum();
  }

  /** One line: what was fitted and what it is worth. */
  static String line(Ground ground, List<Case> cases) {
    Calibration fit = fit(cases);
    Calibration even = new Calibration(1, 0, 0.06);
    return String.format(
        Locale.ROOT,
        "%s: %d frames of %d nights, fitted %s; score %.4f, crosswise %.4f, in use %.4f, odds with"
            + " 6 %% astray %.4f%n",
        ground,
        cases.size(),
        cases.stream().map(Case::night).distinct().count(),
        fit,
        score(cases, fit),
        crosswise(cases),
        score(cases, Calibration.fitted(ground)),
        score(cases, even));
  }
}
