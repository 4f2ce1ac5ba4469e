package rondure.night;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.distribution.continuous.TDistribution;

/**
 * A parabola through frames whose focus was stepped, with the positions that explain them best:
 * equal steps from frame to frame, or from one group of repeated frames to the next; where these do
 * not fit, steps that scatter.
 *
 * @param positions of each frame, in steps from the first
 * @param curve the parabola, its errors grown by what the steps scatter
 * @param uneven scatter of the steps, a share of a step; 0 where equal steps fit
 * @param sigmaPx2 of each frame: its error, and what its uneven step adds
 */
record SeriesFit(List<Double> positions, Parabola curve, double uneven, List<Double> sigmaPx2) {
  private static final int MOST_REPEATS = 4;

  /** Equal steps are given up when chance would leave so large a misfit this seldom. */
  private static final double BY_CHANCE = 0.01;

  /** Neighbours within so many standard errors may be repeats. */
  private static final double ALIKE_SIGMAS = 2.5;

  /** No ring is turned more evenly, a share of a step: common practice. */
  private static final double LEAST_UNEVEN = 0.05;

  private static final int ROUNDS = 5;
  private static final int HALVINGS = 12;

  SeriesFit {
    positions = List.copyOf(positions);
    sigmaPx2 = List.copyOf(sigmaPx2);
  }

  /**
   * @param orders of the frames: what stands between two of them counts as a step too
   * @param px2 their second moments
   * @param sigma standard errors
   */
  static Optional<SeriesFit> of(
      int[] orders, double[] px2, double[] sigma, SeriesSettings settings) {
    List<Plan> plans = plans(orders, px2, sigma, settings);
    return plans.stream()
        .filter(Plan::isEven)
        .findFirst()
        .or(() -> plans.stream().min(Comparator.comparingDouble(plan -> plan.curve().misfit())))
        .flatMap(plan -> scattered(plan, px2, sigma, settings.mostUneven()));
  }

  /** Positions with their parabola. */
  private record Plan(List<Double> places, Parabola curve) {
    double[] positions() {
      return places.stream().mapToDouble(p -> p).toArray();
    }

    boolean isEven() {
      return curve.misfit() <= mostMisfit(places.size() - 3);
    }
  }

  static double mostMisfit(int free) {
    return free < 1
        ? 0
        : new ChiSquaredDistribution(free).inverseCumulativeProbability(1 - BY_CHANCE);
  }

  /** One frame at each position first, then repeats. */
  private static List<Plan> plans(
      int[] orders, double[] px2, double[] sigma, SeriesSettings settings) {
    List<double[]> positions = new ArrayList<>();
    for (int repeats = 1; repeats <= MOST_REPEATS; repeats++) {
      for (int phase = 0; phase < repeats; phase++) {
        int count = repeats;
        int shift = phase;
        positions.add(
            Arrays.stream(orders).mapToDouble(o -> (o - orders[0] + shift) / count).toArray());
      }
    }
    positions.add(levels(px2, sigma, false));
    positions.add(levels(px2, sigma, true));
    List<Plan> plans = new ArrayList<>();
    for (double[] plan : positions) {
      if (Arrays.stream(plan).distinct().count() >= settings.leastPositions()) {
        Parabola.fit(plan, px2, sigma).ifPresent(curve -> plans.add(new Plan(boxed(plan), curve)));
      }
    }
    return plans;
  }

  /**
   * Frames alike stand at one position.
   *
   * @param apart whether the sharpest stands alone: what is alike on both sides of it is not one
   *     position
   */
  private static double[] levels(double[] px2, double[] sigma, boolean apart) {
    int sharpest = 0;
    for (int i = 1; i < px2.length; i++) {
      sharpest = px2[i] < px2[sharpest] ? i : sharpest;
    }
    double[] positions = new double[px2.length];
    for (int i = 1; i < px2.length; i++) {
      boolean alike =
          Math.abs(px2[i] - px2[i - 1]) <= ALIKE_SIGMAS * Math.hypot(sigma[i], sigma[i - 1]);
      boolean besideSharpest = apart && (i == sharpest || i - 1 == sharpest);
      positions[i] = positions[i - 1] + (alike && !besideSharpest ? 0 : 1);
    }
    return positions;
  }

  /** With the least scatter of the steps that explains the misfit; empty where it is too large. */
  private static Optional<SeriesFit> scattered(
      Plan plan, double[] px2, double[] sigma, double mostUneven) {
    int free = px2.length - 3;
    if (free < 1) {
      return Optional.empty();
    }
    double uneven = plan.curve().misfit() <= free ? 0 : uneven(plan, px2, sigma, mostUneven);
    if (uneven >= mostUneven) {
      return Optional.empty();
    }
    double student = new TDistribution(free).inverseCumulativeProbability(0.975) / 1.96;
    double factor = uneven > 0 ? student : 1;
    double added = Math.hypot(LEAST_UNEVEN, factor * uneven);
    return reweighted(plan, px2, sigma, uneven)
        .map(
            curve ->
                new SeriesFit(
                    plan.places(),
                    curve.withErrors(factor, added),
                    plan.isEven() ? 0 : uneven,
                    boxed(sigmas(plan.positions(), sigma, curve, uneven))));
  }

  private static double uneven(Plan plan, double[] px2, double[] sigma, double mostUneven) {
    Optional<Parabola> widest = reweighted(plan, px2, sigma, mostUneven);
    if (widest.isEmpty() || widest.get().misfit() > px2.length - 3) {
      return mostUneven;
    }
    double low = 0;
    double high = mostUneven;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      Optional<Parabola> curve = reweighted(plan, px2, sigma, middle);
      boolean enough = curve.isPresent() && curve.get().misfit() <= px2.length - 3;
      low = enough ? low : middle;
      high = enough ? middle : high;
    }
    return high;
  }

  private static Optional<Parabola> reweighted(
      Plan plan, double[] px2, double[] sigma, double uneven) {
    Optional<Parabola> curve = Optional.of(plan.curve());
    for (int round = 0; round < ROUNDS && curve.isPresent(); round++) {
      double[] wider = sigmas(plan.positions(), sigma, curve.get(), uneven);
      curve = Parabola.fit(plan.positions(), px2, wider);
    }
    return curve;
  }

  /** A step that is off by u moves M by 2 a (p - p0) u + a u². */
  private static double[] sigmas(
      double[] positions, double[] sigma, Parabola curve, double uneven) {
    double[] wider = new double[sigma.length];
    for (int i = 0; i < wider.length; i++) {
      double slope = 2 * curve.curvaturePx2() * (positions[i] - curve.at()) * uneven;
      double bend = Math.sqrt(3) * curve.curvaturePx2() * uneven * uneven;
      wider[i] = Math.sqrt(sigma[i] * sigma[i] + slope * slope + bend * bend);
    }
    return wider;
  }

  private static List<Double> boxed(double[] values) {
    return Arrays.stream(values).boxed().toList();
  }
}
