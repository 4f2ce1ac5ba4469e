package rondure.night;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import rondure.night.SeriesTrial.Guess;

/**
 * A parabola through frames whose focus was stepped, with the positions that explain them best.
 *
 * <p>Two things are not known beforehand: how much frames differ that nothing was done to, beyond
 * the noise of their pixels, and how unevenly the focus was stepped. Both are tried on a grid; each
 * pair gives a parabola and a likelihood, and the answer is the mean of the parabolas weighted by
 * likelihood and prior (restricted likelihood: Patterson and Thompson 1971, Biometrika 58, 545,
 * from memory). So few frames with a good fit are not taken at their word.
 *
 * @param positions of each frame, in steps
 * @param curve the parabola, what is not known of noise and steps in its errors
 * @param uneven scatter of the positions, a share of a step, mean over what is likely
 */
record SeriesFit(List<Double> positions, Parabola curve, double uneven) {
  /** Scatter of frames alike, a share of the second moment. */
  private static final double[] SHARED = {0.001, 0.002, 0.004, 0.008, 0.015, 0.03, 0.05};

  private static final double[] SHARED_COARSE = {0.004, 0.02};

  /** Scatter of the positions, a share of a step. */
  private static final double[] UNEVEN = {0, 0.02, 0.04, 0.07, 0.1, 0.15, 0.2, 0.3, 0.45};

  /** How many of them a hand may have made. */
  static final int HANDS = UNEVEN.length - 1;

  private static final double[] UNEVEN_COARSE = {0, 0.07, 0.2};

  /** Errors of measured positions, of what their noise lets expect. */
  private static final double[] OF_MEASURED = {0.3, 0.5, 0.7, 1, 1.5};

  SeriesFit {
    positions = List.copyOf(positions);
  }

  /** The best plan's; empty where there is none or the curve has no minimum. */
  static Optional<SeriesFit> of(List<SeriesPlans.Plan> plans, FieldLevels levels) {
    Optional<SeriesTrial> best = Optional.empty();
    double most = Double.NEGATIVE_INFINITY;
    for (SeriesPlans.Plan plan : plans) {
      SeriesTrial trial = new SeriesTrial(plan, levels);
      double evidence = evidence(trial.guesses(SHARED_COARSE, UNEVEN_COARSE));
      if (evidence > most) {
        most = evidence;
        best = Optional.of(trial);
      }
    }
    return best.flatMap(trial -> mean(trial, UNEVEN));
  }

  /**
   * Through frames whose positions were measured.
   *
   * @param axis position of each frame with an error of about 1
   */
  static Optional<SeriesFit> measured(List<Double> axis, FieldLevels levels) {
    return mean(new SeriesTrial(new SeriesPlans.Plan(axis, false), levels), OF_MEASURED);
  }

  /** Logarithm of how well a plan explains the frames, whatever the scatters. */
  private static double evidence(List<Guess> guesses) {
    double most = most(guesses);
    double sum = guesses.stream().mapToDouble(g -> Math.exp(g.logWeight() - most)).sum();
    return guesses.isEmpty() ? Double.NEGATIVE_INFINITY : most + Math.log(sum);
  }

  private static double most(List<Guess> guesses) {
    return guesses.stream().mapToDouble(Guess::logWeight).max().orElse(0);
  }

  private static Optional<SeriesFit> mean(SeriesTrial trial, double[] unevens) {
    List<Guess> guesses = trial.guesses(SHARED, unevens);
    if (guesses.isEmpty()) {
      return Optional.empty();
    }
    double most = most(guesses);
    double[] weights = guesses.stream().mapToDouble(g -> Math.exp(g.logWeight() - most)).toArray();
    double sum = Arrays.stream(weights).sum();
    Average average = new Average();
    double uneven = 0;
    for (int i = 0; i < weights.length; i++) {
      average.add(guesses.get(i), weights[i] / sum);
      uneven += weights[i] / sum * guesses.get(i).uneven();
    }
    return Optional.of(new SeriesFit(trial.plan().positions(), average.curve(), uneven));
  }

  /** Mean of parabolas, the error of the place from theirs and from how they differ. */
  private static final class Average {
    private double at;
    private double atSquare;
    private double least;
    private double leastVariance;
    private double curvature;
    private double misfit;

    void add(Guess guess, double weight) {
      Parabola curve = guess.curve();
      double share = curve.at() - Math.floor(curve.at());
      // Best focus lies between two frames, each of them off by its own.
      double between = share * share + (1 - share) * (1 - share);
      double variance =
          curve.atError() * curve.atError() + guess.uneven() * guess.uneven() * between;
      at += weight * curve.at();
      atSquare += weight * (curve.at() * curve.at() + variance);
      least += weight * curve.leastPx2();
      leastVariance += weight * curve.leastErrorPx2() * curve.leastErrorPx2();
      curvature += weight * curve.curvaturePx2();
      misfit += weight * curve.misfit();
    }

    Parabola curve() {
      double error = Math.sqrt(Math.max(0, atSquare - at * at));
      return new Parabola(at, error, least, Math.sqrt(leastVariance), curvature, misfit, 0);
    }
  }
}
