package rondure.stars;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rondure.base.Stamp;

class AverageStarsTest {

  private static StarField field(int side, int parity, StarCanvas.Kernel kernel) {
    StarCanvas canvas =
        TestFrames.paint(
            new TestFrames.Layout(side, 50),
            20_000,
            4,
            (on, x, y, flux) -> on.gaussianStar(x, y, flux, 1.1, kernel));
    return TestFrames.measure(canvas, new StarCanvas.Exposure(100, 10, 0, parity, 8));
  }

  /** Second moments of a stamp in px², above a tenth of the peak. */
  private static double[] widths(AverageStar average) {
    Stamp stamp = average.stamp();
    double light = 0;
    double xx = 0;
    double yy = 0;
    double middle = (stamp.sidePx() - 1) / 2.0;
    for (int y = 0; y < stamp.sidePx(); y++) {
      for (int x = 0; x < stamp.sidePx(); x++) {
        double dx = (x - middle) / average.samplesPerPx();
        double dy = (y - middle) / average.samplesPerPx();
        double value = stamp.at(x, y);
        if (Math.hypot(dx, dy) < 5) {
          light += value;
          xx += value * dx * dx;
          yy += value * dy * dy;
        }
      }
    }
    return new double[] {xx / light, yy / light};
  }

  @ParameterizedTest
  @ValueSource(ints = {-1, 1})
  void theAverageOfRoundStarsIsAsWideAsTheyAre(int parity) {
    AverageStar whole = field(6, parity, StarCanvas.point()).averageStars().get(0);
    assertEquals(AverageStar.Zone.WHOLE, whole.zone());
    assertEquals(36, whole.starCount());
    double[] widths = widths(whole);
    // the pixel box is in the light; the gathering square may add another, at most 1/12
    assertEquals(1.21 + 0.083, widths[0], 0.14);
    assertEquals(widths[0], widths[1], 0.06);
    int middle = whole.stamp().sidePx() / 2;
    assertEquals(1, whole.stamp().at(middle, middle), 0.08);
    assertTrue(whole.stamp().sidePx() % 2 == 1 && whole.stamp().sidePx() <= 65);
  }

  @Test
  void theAverageOfTrailsPointsAlongThem() {
    AverageStar whole = field(6, -1, StarCanvas.line(6, Math.PI / 2)).averageStars().get(0);
    double[] widths = widths(whole);
    assertTrue(widths[1] > 2 * widths[0], widths[0] + " by " + widths[1]);
  }

  @Test
  void zonesWithFewerThanFiveStarsHaveNoAverage() {
    List<AverageStar> two = field(2, -1, StarCanvas.point()).averageStars();
    assertEquals(List.of(), two);
    List<AverageStar> many = field(9, -1, StarCanvas.point()).averageStars();
    assertEquals(List.of(AverageStar.Zone.values()), many.stream().map(AverageStar::zone).toList());
  }
}
