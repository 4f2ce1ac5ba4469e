package rondure.night;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Parabolas through the frames of a series by one plan of its positions, frames of one position
 * gathered to a stop: one parabola for each supposed scatter of frames alike and of positions.
 */
final class SeriesTrial {
  /** Share of series that are stepped evenly, by a motor (our choice). */
  private static final double EVENLY = 0.5;

  /** Frames alike seldom scatter by more than this share (our choice). */
  private static final double USUAL_SHARED = 0.01;

  /** What steps by sight must explain better: e^4 times, as they are chosen for it. */
  private static final double PRICE_OF_SIGHT = 4;

  private static final int ROUNDS = 3;

  private final SeriesPlans.Plan plan;
  private final double[] positions;
  private final double[] px2;
  private final double[] noise;
  private final double[] stops;
  private final double[] means;
  private final double[] counts;

  SeriesTrial(SeriesPlans.Plan plan, FieldLevels levels) {
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

  /**
   * One parabola.
   *
   * @param uneven supposed scatter of the positions
   * @param logWeight logarithm of its restricted likelihood and prior
   */
  record Guess(Parabola curve, double uneven, double logWeight) {}

  SeriesPlans.Plan plan() {
    return plan;
  }

  /**
   * One for each pair that gives a parabola with a minimum.
   *
   * @param shareds scatter of frames alike, shares of the second moment
   * @param unevens scatter of positions, in their unit
   */
  List<Guess> guesses(double[] shareds, double[] unevens) {
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

  private static double logPrior(double shared, double uneven) {
    double steps = uneven == 0 ? EVENLY : (1 - EVENLY) / SeriesFit.HANDS;
    return Math.log(steps) - Math.log1p(Math.pow(shared / USUAL_SHARED, 2));
  }
}
