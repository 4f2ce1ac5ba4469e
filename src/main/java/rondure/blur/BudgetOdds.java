package rondure.blur;

import java.util.EnumMap;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * Probabilities of the causes from a budget and its errors: the naming rule is asked of many
 * budgets drawn about it, always the same draws.
 */
final class BudgetOdds {
  private static final int DRAWS = LightMissing.DRAWS;
  private static final int NORMALS = 7;
  private static final double[] CHANCE = chance();

  /**
   * Which core the stars are wider than by a quarter, where it has wings: the Gaussian of its
   * half-maximum width, which is what one sees; its second moment as far as stars show it; or all
   * of its wings, also those that noise hides.
   */
  private static final double BY_WHAT_SHOWS = 0.8;

  private static final double BY_ALL_WINGS = 0.05;

  /** Of any core's second moment: 1 % of the widening where a cause begins to be named. */
  private static final double OFF_AT_THE_LIMIT = 0.055;

  private static final CoreDraw[] FORM = form();

  /** A core by power of its visible share, and times a factor. */
  private record CoreDraw(double power, double factor) {
    double px2(double corePx2, double visibleShare) {
      return corePx2 * factor * Math.pow(visibleShare, power);
    }
  }

  private final NamingRule rule;
  private final Leeway leeway;

  BudgetOdds(AttributionSettings settings, Leeway leeway) {
    this.rule = new NamingRule(settings);
    this.leeway = leeway;
  }

  /** One for each draw. */
  private static CoreDraw[] form() {
    SplittableRandom random = new SplittableRandom(20_261_126);
    CoreDraw[] drawn = new CoreDraw[DRAWS];
    for (int draw = 0; draw < DRAWS; draw++) {
      double luck = random.nextDouble();
      double power = luck < BY_WHAT_SHOWS ? 1 : luck < 1 - BY_ALL_WINGS ? 0 : -1;
      drawn[draw] = new CoreDraw(power, Math.exp(OFF_AT_THE_LIMIT * random.nextGaussian()));
    }
    return drawn;
  }

  /** Standard normal numbers, {@link #NORMALS} for each draw. */
  private static double[] chance() {
    SplittableRandom random = new SplittableRandom(20_250_901);
    double[] normals = new double[DRAWS * NORMALS];
    for (int i = 0; i < normals.length; i++) {
      normals[i] = random.nextGaussian();
    }
    return normals;
  }

  /** Both hypotheses about the core, mixed by their probabilities. */
  Map<Cause, Double> of(FrameBudget budget, CoreReading core, LightMissing missing) {
    Doubt doubt = new Doubt(budget.tradeablePx2(), core.visibleShare(), missing);
    Map<Cause, Double> odds = of(budget.byLens(), doubt);
    if (budget.byLensIfDefocused().isPresent()) {
      Map<Cause, Double> soft = of(budget.byLensIfDefocused().get(), doubt);
      odds = Mixing.mix(odds, core.realProbability(), soft);
    }
    return doubted(odds, budget.skyProbability());
  }

  /** What the sky has, shared with the tripod as far as it may be the tripod's. */
  private static Map<Cause, Double> doubted(Map<Cause, Double> odds, double skyProbability) {
    Map<Cause, Double> shared = new EnumMap<>(odds);
    double trailing = odds.get(Cause.TRAILING);
    shared.put(Cause.TRAILING, trailing * skyProbability);
    shared.merge(Cause.TRIPOD, trailing * (1 - skyProbability), Double::sum);
    return shared;
  }

  /** What is not told by a budget's own errors. */
  private record Doubt(double tradeablePx2, double visibleShare, LightMissing missing) {}

  private Map<Cause, Double> of(Rivals rivals, Doubt doubt) {
    Map<Cause, Double> odds = new EnumMap<>(Cause.class);
    for (int i = 0; i < rivals.budgets().size(); i++) {
      double share = rivals.shares().get(i);
      of(rivals.budgets().get(i), doubt)
          .forEach((cause, p) -> odds.merge(cause, share * p, Double::sum));
    }
    return odds;
  }

  private Map<Cause, Double> of(Budget budget, Doubt doubt) {
    Map<Cause, Double> odds = new EnumMap<>(Cause.class);
    for (Cause cause : Cause.values()) {
      odds.put(cause, 0.0);
    }
    for (int draw = 0; draw < DRAWS; draw++) {
      int at = draw * NORMALS;
      double lostShare = doubt.missing().drawn(draw, CHANCE[at + 6]);
      double trade = doubt.tradeablePx2() * leeway.tradeShare() * CHANCE[at + 5];
      Terms dry = drawn(budget.sky(), budget.error(), at, trade);
      Terms edge = drawn(budget.edge(), budget.error(), at, trade);
      double core = FORM[draw].px2(dry.corePx2(), doubt.visibleShare());
      odds.merge(
          rule.of(dry.withCore(core), edge.withCore(core), lostShare), 1.0 / DRAWS, Double::sum);
    }
    return odds;
  }

  /** One budget about the given one; light moved between focus and tripod does not widen. */
  private Terms drawn(Terms terms, Terms error, int at, double tradePx2) {
    double core = terms.corePx2() * Math.exp(leeway.coreShare() * CHANCE[at]);
    double moved = Math.max(-terms.tripodPx2(), Math.min(terms.focusPx2(), tradePx2));
    // Stars tell disc and lens together better than each: what one has too much, the other lacks.
    double traded = Math.min(error.focusPx2(), error.lensPx2());
    double lensAlone = Math.sqrt(error.lensPx2() * error.lensPx2() - traded * traded);
    // A smaller core leaves more to explain, alike everywhere: the disc takes it.
    double left = terms.corePx2() - core;
    return new Terms(
        core,
        off(terms.focusPx2(), error.focusPx2(), core, CHANCE[at + 1]) - moved + left,
        off(terms.trailingPx2(), error.trailingPx2(), core, CHANCE[at + 2]),
        off(terms.tripodPx2(), error.tripodPx2(), core, CHANCE[at + 3]) + moved,
        off(terms.lensPx2(), lensAlone, core, CHANCE[at + 4]) - traded * CHANCE[at + 1],
        0,
        0);
  }

  private double off(double px2, double errorPx2, double corePx2, double normal) {
    double share = leeway.termShare() * px2;
    double floor = leeway.floorShare() * corePx2;
    return px2 + normal * Math.sqrt(errorPx2 * errorPx2 + share * share + floor * floor);
  }
}
