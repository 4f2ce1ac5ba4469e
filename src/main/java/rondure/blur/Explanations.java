package rondure.blur;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Lenses that explain a scene and what share of belief each deserves. The first is the one to book
 * by, of the others the likeliest come first.
 *
 * @param solutions at least one
 * @param shares adding up to 1
 */
record Explanations(List<SceneSolution> solutions, List<Double> shares) {

  /** What is less likely than this is not worth a budget of its own. */
  private static final double LEAST_SHARE = 0.02;

  private static final int MOST = 4;

  /** Of a difference of half χ²: stars share what a model misses. */
  static final double CAUTION = 2.5;

  /**
   * Measured moments of large discs came out up to a third too large, of what is beyond the core
   * (drawn nights, docs/accuracy.md); what {@link SeenComa} leaves open is less.
   */
  static final double CURVE_SHARE = 0.25;

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
    List<Double> shares = odds.stream().map(w -> w / sum).toList();
    return new Explanations(kept, shares).byLargerPart();
  }

  /**
   * The first is the likeliest of those that give the larger part of the widening to what most
   * belief gives it to, focus or lens: several like lenses must not lose to one of another kind.
   */
  private Explanations byLargerPart() {
    double ofFocus = 0;
    for (int i = 0; i < solutions.size(); i++) {
      ofFocus += moreFocus(solutions.get(i)) ? shares.get(i) : 0;
    }
    boolean focus = ofFocus > 0.5;
    List<SceneSolution> ordered = new ArrayList<>();
    List<Double> with = new ArrayList<>();
    for (boolean part : new boolean[] {focus, !focus}) {
      for (int i = 0; i < solutions.size(); i++) {
        if (moreFocus(solutions.get(i)) == part) {
          ordered.add(solutions.get(i));
          with.add(shares.get(i));
        }
      }
    }
    return new Explanations(ordered, with);
  }

  private static boolean moreFocus(SceneSolution solution) {
    double more = 0;
    for (int k : solution.together()) {
      Booking booking = new Booking(solution.models().get(k), solution.shared(), solution.own(k));
      more += booking.focusPx2() - booking.lensPx2();
    }
    return more > 0;
  }

  /**
   * Of shapes and of the sides that stars' tails are on, which tell coma from discs. Coma of higher
   * order is one thing more to choose: half the logarithm of the stars (BIC).
   */
  private static double loss(SceneSolution solution, double misfit) {
    double loss =
        solution.tolerantLoss(solution.together(), CURVE_SHARE)
            + CAUTION * misfit * ComaTails.loss(solution);
    double stars = solution.together().stream().mapToDouble(k -> starsOf(solution, k)).sum();
    boolean steep = solution.lens().comaGrowth() == ComaGrowth.STEEP;
    return steep ? loss + misfit * Math.log(Math.max(1, stars)) / 2 : loss;
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
