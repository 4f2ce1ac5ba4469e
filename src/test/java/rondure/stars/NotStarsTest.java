package rondure.stars;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rondure.base.PixelPlane;

/** Lights that stand on things, and stars of which only the tips are recorded. */
class NotStarsTest {
  private static final PixelContext LINEAR = new PixelContext(15000, 1, false);
  private static final double BLACK_STEP = 65535 / 255.0 / 12.92;

  private static long free(List<Candidate> found) {
    return found.stream().filter(candidate -> candidate.refusal().isEmpty()).count();
  }

  /** A room: boards of all brightnesses with edges and lights, no sky anywhere. */
  @Test
  void lightsAmongObjectsAreNoStars() {
    SkyPainter painter = new SkyPainter(1280, 960, 41).level(300);
    for (int i = 0; i < 120; i++) {
      double x0 = painter.uniform(-60, 1280);
      double y0 = painter.uniform(-60, 960);
      double x1 = x0 + painter.uniform(10, 160);
      double y1 = y0 + painter.uniform(10, 160);
      double level = painter.uniform(100, 900);
      painter.replace((x, y) -> x >= x0 && x < x1 && y >= y0 && y < y1 ? level : Double.NaN);
    }
    for (int i = 0; i < 40; i++) {
      painter.star(painter.uniform(20, 1260), painter.uniform(20, 940), 20000, 1.5);
    }
    PixelPlane plane = PixelPlane.full(1280, 960, painter.exposed(5, 0.2));
    List<Candidate> found = StarFinder.find(plane, LINEAR, StarSettings.defaults()).candidates();
    assertTrue(found.size() > 40, found.size() + " found");
    assertTrue(free(found) <= 3, free(found) + " taken for stars");
  }

  /**
   * ∫ r² e^(−r²/2) over r² &gt; 2 ln P, over that of all r, numerically: what a Gaussian loses of
   * its second moment below one step when its peak is P steps.
   */
  @Test
  void aPeakOfAHundredAndFifteenStepsLosesATwentiethOfItsSecondMoment() {
    double edge = Math.sqrt(2 * Math.log(LostWings.LEAST_PEAK_STEPS));
    double all = 0;
    double lost = 0;
    for (double r = 0.0005; r < 12; r += 0.001) {
      double part = r * r * r * Math.exp(-r * r / 2);
      all += part;
      lost += r > edge ? part : 0;
    }
    assertEquals(0.05, lost / all, 0.001);
  }

  /** Stars in 8 bits with peaks of 8 to 30 steps: measured only where the sky's noise is kept. */
  @ParameterizedTest
  @CsvSource({"0.02, false", "0.6, true"})
  void starsWithoutTheirWingsAreTooFaint(double noiseSteps, boolean kept) {
    SkyPainter painter = new SkyPainter(640, 640, 43).level(1);
    for (int i = 0; i < 49; i++) {
      double peak = 8 + 22 * (i / 48.0);
      painter.star(80 + 80 * (i % 7), 80 + 80 * (i / 7), peak * 2 * Math.PI, 1);
    }
    float[] samples = painter.exposed(noiseSteps, 0);
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (float) (BLACK_STEP * Math.max(0, Math.rint(samples[i])));
    }
    PixelContext developed = new PixelContext(65535, BLACK_STEP, true);
    List<Candidate> found =
        StarFinder.find(PixelPlane.full(640, 640, samples), developed, StarSettings.defaults())
            .candidates();
    long faint =
        found.stream().filter(c -> c.refusal().equals(Optional.of(Refusal.TOO_FAINT))).count();
    assertEquals(kept ? 0 : 49, faint);
    assertEquals(49, found.size(), 2);
  }
}
