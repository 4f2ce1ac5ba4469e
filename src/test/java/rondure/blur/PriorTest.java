package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class PriorTest {
  private static final double TINY = 1e-6;

  private static double loss(Prior prior, double value) {
    return prior.loss(new double[] {value});
  }

  private static void assertPullIsMinusTheSlope(Prior prior) {
    for (double value : new double[] {-4, 1.7, 2, 2.6, 11}) {
      double slope = (loss(prior, value + TINY) - loss(prior, value - TINY)) / (2 * TINY);
      assertEquals(-slope, prior.pull(0, value), 1e-6 * (1 + Math.abs(slope)));
    }
  }

  @Test
  void thePullIsMinusTheSlopeOfTheLoss() {
    assertPullIsMinusTheSlope(new Prior(1).expect(0, 2, 0.5));
    assertPullIsMinusTheSlope(new Prior(1).expectLoosely(0, 2, 0.5, 3));
  }

  /** Cauchy's density 1 / (1 + u²): its pull is greatest at u = 1 and falls off as 1/u. */
  @Test
  void aLooseExpectationIsOverruled() {
    Prior loose = new Prior(1).expectLoosely(0, 0, 1, 1);
    assertEquals(0.5, loose.pull(0, -1), 1e-12);
    assertTrue(loose.pull(0, -2) < loose.pull(0, -1));
    assertEquals(0.1, loose.pull(0, -10), 2e-3);
    assertEquals(10, new Prior(1).expect(0, 0, 1).pull(0, -10), 1e-12);
    assertEquals(Math.log(101) / 2, loss(loose, 10), 1e-12);
  }

  @Test
  void nearItsTargetItIsAGaussianOne() {
    Prior loose = new Prior(1).expectLoosely(0, 1, 0.4, 1);
    Prior strict = new Prior(1).expect(0, 1, 0.4);
    assertEquals(loss(strict, 1.02), loss(loose, 1.02), 1e-5);
  }
}
