package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import rondure.base.Orientation;
import rondure.sim.NightPlan;

/**
 * The whole attribution, from star lists over registration and budget to probabilities: a camera
 * held upright, upside down or mirrored, or with smaller pixels, sees the same causes. Simulated
 * nights of every trouble, without pixels.
 *
 * <p>Not the same to the last digit: errors are drawn from blocks of the field, whose order turns
 * with it, so that frames at the edge of two answers may fall on either side; floors and priors are
 * in px and do not scale.
 */
class AttributionSymmetryTest {
  private static final int FRAMES = 5;
  private static final double SURE = 0.9;
  private static final SceneAttribution ATTRIBUTION =
      new SceneAttribution(AttributionSettings.defaults());
  private static final TurnedNights.Other SAME = new TurnedNights.Other(Orientation.NORMAL, 1);

  @Provide
  Arbitrary<Orientation> turns() {
    return Arbitraries.of(Orientation.values()).filter(turn -> turn != Orientation.NORMAL);
  }

  @Property(tries = 6, seed = "20260101")
  void turningOrMirroringTheFramesKeepsTheCauses(
      @ForAll @IntRange(min = 0, max = 999) int night, @ForAll("turns") Orientation turn) {
    assertAlike(night, new TurnedNights.Other(turn, 1), 0.01);
  }

  @Property(tries = 4, seed = "20260102")
  void smallerPixelsKeepTheCauses(
      @ForAll @IntRange(min = 0, max = 999) int night, @ForAll("turns") Orientation turn) {
    assertAlike(night, new TurnedNights.Other(turn, 1.25), 0.02);
  }

  private static void assertAlike(int number, TurnedNights.Other other, double tolerance) {
    NightPlan plan = RandomNights.plan(number, FRAMES);
    BudgetNights.Night night = BudgetNights.ofTruth(plan);
    SceneVerdicts plain = ATTRIBUTION.judge(TurnedNights.of(plan, night, SAME));
    SceneVerdicts seen = ATTRIBUTION.judge(TurnedNights.of(plan, night, other));
    for (int i = 0; i < plain.frames().size(); i++) {
      String where = "night " + number + ", frame " + i + ", " + other;
      assertSameCause(plain.frames().get(i).verdict(), seen.frames().get(i).verdict(), where);
      Judged one = plain.frames().get(i);
      Judged two = seen.frames().get(i);
      assertEquals(one.budget().isPresent(), two.budget().isPresent(), where);
      if (one.budget().isPresent()) {
        double square = other.scale() * other.scale();
        assertSameLight(one.budget().get().sky(), two.budget().get().sky(), square, tolerance);
      }
    }
  }

  /** Whoever was sure names the same; who was not names nothing else. */
  private static void assertSameCause(Verdict one, Verdict two, String where) {
    boolean sure = one.confidence() >= SURE;
    if (sure || one.cause().isPresent() && two.cause().isPresent()) {
      assertEquals(one.cause(), two.cause(), where + ": " + one + two);
    }
  }

  /** The whole width and the predicted trail grow with the square of the scale. */
  private static void assertSameLight(Terms one, Terms two, double square, double tolerance) {
    double whole = one.corePx2() + one.excessPx2();
    assertEquals(whole, (two.corePx2() + two.excessPx2()) / square, tolerance * whole);
    assertEquals(one.trailingPx2(), two.trailingPx2() / square, tolerance * whole);
  }
}
