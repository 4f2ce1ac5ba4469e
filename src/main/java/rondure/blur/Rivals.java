package rondure.blur;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/**
 * Budgets of one frame by the lenses that may explain its scene, likeliest first.
 *
 * @param budgets at least one
 * @param shares how far each is believed, adding up to 1
 */
public record Rivals(List<Budget> budgets, List<Double> shares) {
  private static final double OTHERWISE = 0.3;
  private static final double WORTH_SAYING = 0.1;

  public Rivals {
    budgets = List.copyOf(budgets);
    shares = List.copyOf(shares);
    if (budgets.isEmpty() || budgets.size() != shares.size()) {
      throw new IllegalArgumentException(
          "need as many shares as budgets, were " + shares.size() + ", " + budgets.size());
    }
  }

  /** A budget without rivals. */
  public static Rivals none(Budget budget) {
    return new Rivals(List.of(budget), List.of(1.0));
  }

  /**
   * Another lens that may explain the scene.
   *
   * @param share how far it is believed
   */
  record Rival(Budget budget, double share) {}

  /** The likeliest of those that book a good part of the widening elsewhere. */
  Optional<Rival> rival() {
    Terms first = budgets.get(0).sky();
    double much = OTHERWISE * first.excessPx2();
    for (int i = 1; i < budgets.size(); i++) {
      Terms other = budgets.get(i).sky();
      boolean otherwise = Math.abs(other.focusPx2() - first.focusPx2()) > much;
      if (otherwise && shares.get(i) >= WORTH_SAYING) {
        return Optional.of(new Rival(budgets.get(i), shares.get(i)));
      }
    }
    return Optional.empty();
  }

  /** The first, its errors widened by how far the others are from it. */
  public Budget likeliest() {
    Budget first = budgets.get(0);
    if (budgets.size() == 1) {
      return first;
    }
    Terms error = first.error();
    return first.withError(
        new Terms(
            widened(error, Terms::corePx2),
            widened(error, Terms::focusPx2),
            widened(error, Terms::trailingPx2),
            widened(error, Terms::tripodPx2),
            widened(error, Terms::lensPx2),
            error.hazePx2(),
            error.unexplainedPx2()));
  }

  private double widened(Terms error, ToDoubleFunction<Terms> term) {
    double at = term.applyAsDouble(budgets.get(0).sky());
    double square = Math.pow(term.applyAsDouble(error), 2);
    for (int i = 1; i < budgets.size(); i++) {
      square += shares.get(i) * Math.pow(term.applyAsDouble(budgets.get(i).sky()) - at, 2);
    }
    return Math.sqrt(square);
  }
}
