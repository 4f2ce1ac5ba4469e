package rondure.night;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

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

  private static final double[] UNEVEN_COARSE = {0, 0.07, 0.2};

  /** Errors of measured positions, of what their noise lets expect. */
  private static final double[] OF_MEASURED = {0.3, 0.5, 0.7, 1, 1.5};

  /** Share of series that are stepped evenly, by a motor (our choice). */
  private static final double EVENLY = 0.5;

  /** Frames alike seldom scatter by more than this share (our choice). */
  private static final double USUAL_SHARED = 0.01;

  /** What steps by sight must explain better: e^4 times, as they are chosen for it. */
  private static final double PRICE_OF_SIGHT = 4;

  private static final int ROUNDS = 3;

  SeriesFit {
    positions = List.copyOf(positions);
  }

  /** The best plan's; empty where there is none or the curve has no minimum. */
  static Optional<SeriesFit> of(List<SeriesPlans.Plan> plans, FieldLevels levels) {
    return plans.stream()
        .map(plan -> new Trial(plan, levels))
        .max(Comparator.comparingDouble(Trial::evidence))
        .flatMap(trial -> trial.fit(UNEVEN));
  }

  /**
   * Through frames whose positions were measured.
   *
   * @param axis position of each frame with an error of about 1
   */
  static Optional<SeriesFit> measured(List<Double> axis, FieldLevels levels) {
    return new Trial(new SeriesPlans.Plan(axis, false), levels).fit(OF_MEASURED);
  }

  /** One parabola of the grid. */
  private record Guess(Parabola curve, double uneven, double logWeight) {}

  /** One plan, its frames gathered to stops. */
  private static final class Trial {
    private final SeriesPlans.Plan plan;
    private final double[] positions;
    private final double[] px2;
    private final double[] noise;
    private final double[] stops;
    private final double[] means;
    private final double[] counts;

    Trial(SeriesPlans.Plan plan, FieldLevels levels) {
      this.plan = plan;
      this.positions = plan.array();
      px2 = levels.px2().stream().mapToDouble(level -> level).toArray();
      noise = levels.errorPx2().stream().mapToDouble(error -> error).toArray();
      stops = Arrays.stream(positions).sorted().distinct().toArray();
      means = new double[stops.length];
      counts = new double[stops.length];
      for (int i = 0; i < px2.length; i++) {
        counts[stop(i)]++;
        means[stop(i)] += px2[i];
      }
      for (int k = 0; k < stops.length; k++) {
        means[k] /= counts[k];
      }
    }

    private int stop(int frame) {
      return Arrays.binarySearch(stops, positions[frame]);
    }

    /** Logarithm of how well the plan explains the frames. */
    double evidence() {
      List<Guess> guesses = guesses(SHARED_COARSE, UNEVEN_COARSE);
      double most = most(guesses);
      double sum = guesses.stream().mapToDouble(g -> Math.exp(g.logWeight() - most)).sum();
      return guesses.isEmpty() ? Double.NEGATIVE_INFINITY : most + Math.log(sum);
    }

    private static double most(List<Guess> guesses) {
      return guesses.stream().mapToDouble(Guess::logWeight).max().orElse(0);
    }

    Optional<SeriesFit> fit(double[] unevens) {
      List<Guess> guesses = guesses(SHARED, unevens);
      double most = most(guesses);
      double[] weights =
          guesses.stream().mapToDouble(g -> Math.exp(g.logWeight() - most)).toArray();
      double sum = Arrays.stream(weights).sum();
      Average average = new Average();
      double uneven = 0;
      for (int i = 0; i < weights.length; i++) {
        average.add(guesses.get(i), weights[i] / sum);
        uneven += weights[i] / sum * guesses.get(i).uneven();
      }
      return guesses.isEmpty()
          ? Optional.empty()
          : Optional.of(new SeriesFit(plan.positions(), average.curve(), uneven));
    }

    private List<Guess> guesses(double[] shareds, double[] unevens) {
      List<Guess> guesses = new ArrayList<>();
      double[] plain = new double[stops.length];
      Arrays.fill(plain, 1);
      Optional<Parabola> start = Parabola.fit(stops, means, plain);
      for (double shared : shareds) {
        for (double uneven : unevens) {
          start.flatMap(curve -> guess(curve, shared, uneven)).ifPresent(guesses::add);
        }
      }
      return guesses;
    }

    private Optional<Guess> guess(Parabola start, double shared, double uneven) {
      Optional<Parabola> curve = Optional.of(start);
      double[] sigma = new double[0];
      double[] single = singleVariances(shared);
      for (int round = 0; round < ROUNDS && curve.isPresent(); round++) {
        sigma = sigmas(curve.get(), single, uneven);
        curve = Parabola.fit(stops, means, sigma);
      }
      double[] last = sigma;
      return curve.map(
          c -> new Guess(c, uneven, logPrior(shared, uneven) + logWeight(c, single, last)));
    }

    /** Variance of one frame, for each stop. */
    private double[] singleVariances(double shared) {
      double[] variances = new double[stops.length];
      for (int i = 0; i < px2.length; i++) {
        double own = noise[i] * noise[i] + Math.pow(shared * means[stop(i)], 2);
        variances[stop(i)] += own / counts[stop(i)];
      }
      return variances;
    }

    /** A position that is off by u moves M by 2 a (p - p0) u + a u². */
    private double[] sigmas(Parabola curve, double[] single, double uneven) {
      double[] sigma = new double[stops.length];
      for (int k = 0; k < sigma.length; k++) {
        double slope = curve.slopeAt(stops[k]) * uneven;
        double bend = curve.curvaturePx2() * uneven * uneven;
        sigma[k] = Math.sqrt(single[k] / counts[k] + slope * slope + 2 * bend * bend);
      }
      return sigma;
    }

    private double logWeight(Parabola curve, double[] single, double[] sigma) {
      double log = curve.logVolume() + 3 * Math.log(stops[stops.length - 1] - stops[0]);
      log -= curve.misfit() / 2;
      for (int k = 0; k < sigma.length; k++) {
        log -= Math.log(sigma[k]) + (counts[k] - 1) * Math.log(single[k]) / 2;
        log -= Math.log(counts[k]) / 2;
      }
      for (int i = 0; i < px2.length; i++) {
        log -= Math.pow(px2[i] - means[stop(i)], 2) / single[stop(i)] / 2;
      }
      return plan.bySight() ? log - PRICE_OF_SIGHT : log;
    }
  }

  private static double logPrior(double shared, double uneven) {
    double steps = uneven == 0 ? EVENLY : (1 - EVENLY) / (UNEVEN.length - 1);
    return Math.log(steps) - Math.log1p(Math.pow(shared / USUAL_SHARED, 2));
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
