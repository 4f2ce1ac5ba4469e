package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import rondure.base.RobustStats;
import rondure.sim.CauseShares;
import rondure.sim.FrameTruth;
import rondure.sim.TrueCause;

/**
 * How well budgets recover the simulator's truth over many nights, registered by their stars. The
 * stars' tensors are the true ones, coma as fits show it, with the noise of measuring; what else
 * the estimator of shapes adds is measured elsewhere.
 */
@Tag("thorough")
class BudgetRecoveryTest {
  private static final int NIGHTS = 88;
  private static final int FRAMES = 6;
  private static final double CLEAR_SHARE = 0.6;
  private static final double NAMED_FROM = 1.25;
  private static final double SHARP_BELOW = 1.15;

  private final NamingRule rule = new NamingRule(AttributionSettings.defaults());
  private final List<Double> trail = new ArrayList<>();
  private final List<Double> disc = new ArrayList<>();
  private final List<Double> tripod = new ArrayList<>();
  private final List<Double> explained = new ArrayList<>();
  private int clear;
  private int clearRight;
  private int mixed;
  private int mixedRight;
  private int sharp;
  private int sharpBlamed;
  private int without;
  private int openLenses;

  @Test
  void budgetsRecoverTheTruth() {
    for (int number = 0; number < NIGHTS; number++) {
      BudgetNights.Night night = BudgetNights.registered(RandomNights.plan(number, FRAMES));
      SceneBudget budget = night.budget();
      budget.shared().ifPresent(shared -> explained.add(shared.explainedShare()));
      for (int i = 0; i < FRAMES; i++) {
        if (budget.frames().get(i).isEmpty()) {
          without++;
        } else {
          CoreReading core = budget.shared().orElseThrow().core();
          FrameBudget frame = budget.frames().get(i).get();
          openLenses += frame.byLens().rival().isPresent() ? 1 : 0;
          compare(frame.likelier(core), night.truths().get(i));
        }
      }
    }
    System.out.println(table());
    assertTrue(clearRight >= 0.98 * clear, table());
    assertTrue(mixedRight >= 0.9 * mixed, table());
    assertTrue(openLenses <= 0.1 * NIGHTS * FRAMES, table());
    assertTrue(RobustStats.percentile(0.95, array(trail)) < 0.05, table());
    assertTrue(sharpBlamed <= 0.01 * sharp, table());
    assertTrue(RobustStats.percentile(0.95, array(disc)) < 0.10, table());
    assertTrue(RobustStats.percentile(0.95, array(tripod)) < 0.15, table());
    assertTrue(RobustStats.percentile(0.05, array(explained)) > 0.95, table());
  }

  private void compare(Budget budget, FrameTruth truth) {
    CauseShares shares = truth.sharesPx2();
    double excess =
        shares.focus() + shares.trailing() + shares.tripod() + shares.lens() + shares.haze();
    double widening = Math.sqrt(Math.max(0, 1 + excess / shares.core()));
    boolean right = rule.of(budget.sky(), budget.edge(), 0).name().equals(truth.cause().name());
    if (widening >= NAMED_FROM && largest(shares) >= CLEAR_SHARE * excess) {
      clear++;
      clearRight += right ? 1 : 0;
      addErrors(budget, truth);
    } else if (widening >= NAMED_FROM) {
      mixed++;
      mixedRight += right ? 1 : 0;
    } else if (widening < SHARP_BELOW && truth.cause() == TrueCause.NONE) {
      sharp++;
      sharpBlamed += right ? 0 : 1;
    }
  }

  private static double largest(CauseShares shares) {
    return Math.max(
        Math.max(shares.focus(), shares.trailing()), Math.max(shares.tripod(), shares.lens()));
  }

  private void addErrors(Budget budget, FrameTruth truth) {
    CauseShares shares = truth.sharesPx2();
    switch (truth.cause()) {
      case TRAILING -> trail.add(lengthError(budget.sky().trailingPx2(), shares.trailing()));
      case FOCUS -> disc.add(lengthError(budget.sky().focusPx2(), shares.focus()));
      case TRIPOD -> tripod.add(lengthError(budget.sky().tripodPx2(), shares.tripod()));
      default -> {}
    }
  }

  private static double lengthError(double foundPx2, double truePx2) {
    return Math.abs(Math.sqrt(Math.max(0, foundPx2) / truePx2) - 1);
  }

  private String table() {
    return String.format(
            Locale.ROOT,
            "clear %d of %d, mixed %d of %d, sharp blamed %d of %d, without budget %d, lens open %d%n",
            clearRight,
            clear,
            mixedRight,
            mixed,
            sharpBlamed,
            sharp,
            without,
            openLenses)
        + line("trail length", trail)
        + line("focus disc", disc)
        + line("tripod r.m.s.", tripod)
        + line("explained", explained);
  }

  private static String line(String name, List<Double> values) {
    return String.format(
        Locale.ROOT,
        "%s: %d, 5 %% %.3f, median %.3f, 90 %% %.3f, 95 %% %.3f%n",
        name,
        values.size(),
        RobustStats.percentile(0.05, array(values)),
        RobustStats.percentile(0.5, array(values)),
        RobustStats.percentile(0.9, array(values)),
        RobustStats.percentile(0.95, array(values)));
  }

  private static double[] array(List<Double> values) {
    return values.stream().mapToDouble(v -> v).toArray();
  }
}
