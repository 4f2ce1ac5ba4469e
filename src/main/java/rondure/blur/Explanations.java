package rondure.blur;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Lenses that explain a scene, likeliest first, and what share of belief each deserves.
 *
 * @param solutions at least one
 * @param shares adding up to 1
 */
record Explanations(List<SceneSolution> solutions, List<Double> shares) {

  /** What is less likely than this is not worth a budget of its own. */
  private static final double LEAST_SHARE = 0.02;

  private static final int MOST = 4;

  /** Of a difference of half χ²: stars share what a model misses. */
  private static final double CAUTION = 2.5;

  /**
   * Measured moments of large discs came out up to a third too large, of large coma up to a half
   * too small, of what is beyond the core (drawn nights, docs/accuracy.md).
   */
  private static final double ROUND_SHARE = 0.25;

  /**
   * Where the stars do not tell, a curved field before a flat astigmatic one (a convention, too
   * weak to decide): logarithm of the odds.
   */
  private static final double CURVED_FIRST = 0.3;

  /** Explanations whose bookings differ by less of the core, or of the widening, are one. */
  private static final double SAME_CORE_SHARE = 0.05;

  private static final double SAME_SHARE = 0.15;

  Explanations {
    solutions = List.copyOf(solutions);
    shares = List.copyOf(shares);
    if (solutions.isEmpty() || solutions.size() != shares.size()) {
      throw new IllegalArgumentException(
          "need as many shares as solutions, were " + shares.size() + ", " + solutions.size());
    }
  }

  static Explanations only(SceneSolution solution) {
    return new Explanations(List.of(solution), List.of(1.0));
  }

  SceneSolution likeliest() {
    return solutions.get(0);
  }

  /**
   * Weighs what was found from several starts.
   *
   * @param misfit see {@link SharedMisfit}
   */
  static Explanations of(List<SceneSolution> found, double misfit) {
    List<SceneSolution> sorted = new ArrayList<>(found);
    sorted.sort(Comparator.comparingDouble(one -> loss(one, misfit)));
    List<SceneSolution> kept = new ArrayList<>();
    List<Double> odds = new ArrayList<>();
    double best = loss(sorted.get(0), misfit);
    for (SceneSolution one : sorted) {
      double weight = Math.exp((best - loss(one, misfit)) / (CAUTION * misfit));
      if (weight >= LEAST_SHARE && kept.size() < MOST && isNew(one, kept)) {
        kept.add(one);
        odds.add(weight);
      }
    }
    double sum = odds.stream().mapToDouble(w -> w).sum();
    return new Explanations(kept, odds.stream().map(w -> w / sum).toList());
  }

  /**
   * Of shapes and of the sides that stars' tails are on, which tell coma from discs. Coma of higher
   * order is one thing more to choose: half the logarithm of the stars (BIC).
   */
  private static double loss(SceneSolution solution, double misfit) {
    double loss =
        solution.tolerantLoss(solution.together(), ROUND_SHARE)
            + CAUTION * misfit * ComaTails.loss(solution)
            + CAUTION * misfit * CURVED_FIRST * astigmaticShare(solution.lens());
    double stars = solution.together().stream().mapToDouble(k -> starsOf(solution, k)).sum();
    boolean steep = solution.lens().comaGrowth() == ComaGrowth.STEEP;
    return steep ? loss + misfit * Math.log(Math.max(1, stars)) / 2 : loss;
  }

  /** How much of what the lens's surfaces widen its corners is astigmatism's. */
  private static double astigmaticShare(LensSurface lens) {
    double split = lens.astigmatismPx() * lens.astigmatismPx() / 4;
    double bent = lens.curvaturePx() * lens.curvaturePx();
    return split + bent > 0 ? split / (split + bent) : 0;
  }

  private static int starsOf(SceneSolution solution, int frame) {
    return solution.models().get(frame).stars().count;
  }

  private static boolean isNew(SceneSolution one, List<SceneSolution> kept) {
    return kept.stream().noneMatch(other -> alike(one, other));
  }

  private static boolean alike(SceneSolution one, SceneSolution other) {
    double near = SAME_CORE_SHARE * one.corePx2();
    if (Math.abs(one.corePx2() - other.corePx2()) > near) {
      return false;
    }
    for (int k : one.together()) {
      Booking here = new Booking(one.models().get(k), one.shared(), one.own(k));
      Booking there = new Booking(other.models().get(k), other.shared(), other.own(k));
      double same = Math.max(near, SAME_SHARE * (here.focusPx2() + here.lensPx2()));
      if (Math.abs(here.focusPx2() - there.focusPx2()) > same
          || Math.abs(here.lensPx2() - there.lensPx2()) > same) {
        return false;
      }
    }
    return true;
  }
}
