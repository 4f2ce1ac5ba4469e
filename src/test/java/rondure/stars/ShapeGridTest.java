package rondure.stars;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import rondure.base.Moments;

/**
 * The mean of many stars is what was painted, over sizes, lengths, directions and brightnesses:
 * width of round stars within 3 %, length of trails within 5 %. All cases run before the first
 * complaint; {@code target/shape-grid.txt} lists them.
 */
class ShapeGridTest {
  private static final double NOISE = 10;
  private static final double[] SNRS = {60, 300, 3000};

  /** So many stars along a side that the mean's own error leaves the verdict open by no more. */
  private static final double DECIDED = 0.01;

  private static final int LEAST_SIDE = 4;

  /** One case: what was found over what was painted, and the standard error of that. */
  private record Case(String name, int starCount, double ratio, double error, double tolerance) {
    boolean misses() {
      return !(Math.abs(ratio - 1) < tolerance && starCount >= LEAST_SIDE * LEAST_SIDE - 1);
    }

    @Override
    public String toString() {
      return String.format(
          Locale.ROOT, "%.4f ± %.4f of %d stars, %s", ratio, error, starCount, name);
    }
  }

  /** What is painted in one case. */
  private record Look(double fwhmPx, double lengthPx, double angleRad, boolean greenOnly) {
    Moments core() {
      double sigma = fwhmPx / Moments.FWHM_PER_SIGMA;
      return Moments.round(sigma * sigma + 1.0 / 12);
    }

    Moments truth() {
      return core().plus(Moments.line(lengthPx, angleRad));
    }

    StarField measured(double snr, int side) {
      int pitch = 40 + (int) (8 * Math.sqrt(truth().majorPx2()));
      double sigma = fwhmPx / Moments.FWHM_PER_SIGMA;
      StarCanvas.Kernel kernel =
          lengthPx > 0 ? StarCanvas.line(lengthPx, angleRad) : StarCanvas.point();
      StarCanvas canvas =
          TestFrames.paint(
              new TestFrames.Layout(side, pitch),
              TestFrames.fluxForSnr(snr, NOISE, truth()),
              17,
              (on, x, y, flux) -> on.gaussianStar(x, y, flux, sigma, kernel));
      StarCanvas.Exposure exposure = new StarCanvas.Exposure(100, NOISE, 0, -1, 5);
      return TestFrames.measure(canvas, greenOnly ? exposure.greenOnly() : exposure);
    }
  }

  @Tag("thorough")
  @Test
  void theWholeGridOfRoundStarsAndTrailsIsUnbiasedAtAllBrightnesses() throws IOException {
    List<Case> cases = new ArrayList<>();
    for (double snr : SNRS) {
      addRound(snr, cases);
      addTrails(snr, cases);
    }
    Files.write(Path.of("target", "shape-grid.txt"), cases.stream().map(Case::toString).toList());
    List<Case> misses = cases.stream().filter(Case::misses).toList();
    assertTrue(
        misses.isEmpty(), () -> misses.size() + " of " + cases.size() + " cases miss: " + misses);
  }

  private static void addRound(double snr, List<Case> cases) {
    for (double fwhmPx = 1.8; fwhmPx <= 8; fwhmPx += 0.31) {
      for (boolean greenOnly : new boolean[] {false, true}) {
        Look look = new Look(fwhmPx, 0, 0, greenOnly);
        StarField field = look.measured(snr, LEAST_SIDE);
        double mean = TestFrames.meanMoments(field).meanPx2();
        double ratio = Math.sqrt(mean / look.truth().meanPx2());
        double error = errorOfMean(field, star -> star.moments().meanPx2()) / mean / 2;
        cases.add(new Case(look + ", SNR " + snr, field.stars().size(), ratio, error, 0.03));
      }
    }
  }

  private static void addTrails(double snr, List<Case> cases) {
    for (double lengthPx : new double[] {3, 4, 6, 9, 14, 20, 30}) {
      for (double fwhmPx : new double[] {1.8, 2.6, 4}) {
        for (double angleDegrees = 0; angleDegrees < 180; angleDegrees += 15) {
          Look look = new Look(fwhmPx, lengthPx, Math.toRadians(angleDegrees), false);
          StarField field = look.measured(snr, sideFor(look, snr));
          double ratio = TestFrames.lengthPx(TestFrames.meanMoments(field)) / lengthPx;
          // L² = 24 spin, so dL / L = 12 d spin / L²
          double error =
              12 * errorOfMean(field, star -> along(star.moments(), look)) / lengthPx / lengthPx;
          cases.add(new Case(look + ", SNR " + snr, field.stars().size(), ratio, error, 0.05));
        }
      }
    }
  }

  /** Half of M_major − M_minor in the direction painted. */
  private static double along(Moments moments, Look look) {
    double cos = Math.cos(2 * look.angleRad());
    double sin = Math.sin(2 * look.angleRad());
    return (moments.xxPx2() - moments.yyPx2()) / 2 * cos + moments.xyPx2() * sin;
  }

  /**
   * Spin-2 of a short trail errs by 2 σ²/ν (closed form for a Gaussian), its length by 24 σ²/νL².
   */
  private static int sideFor(Look look, double snr) {
    double one = 24 * look.core().meanPx2() / snr / look.lengthPx() / look.lengthPx();
    return Math.max(LEAST_SIDE, (int) Math.ceil(one / DECIDED));
  }

  private static double errorOfMean(StarField field, ToDoubleFunction<Star> part) {
    double[] values = field.stars().stream().mapToDouble(part).toArray();
    double mean = 0;
    for (double value : values) {
      mean += value / values.length;
    }
    double squares = 0;
    for (double value : values) {
      squares += (value - mean) * (value - mean);
    }
    return Math.sqrt(squares / (values.length - 1) / values.length);
  }
}
