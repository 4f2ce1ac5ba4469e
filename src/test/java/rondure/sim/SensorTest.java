package rondure.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Photon transfer, EMVA Standard 1288: σ² = σ_dark² + K (μ - μ_dark), K counts per electron. */
class SensorTest {

  private static double[] meanAndVariance(char[] counts) {
    double sum = 0;
    for (char value : counts) {
      sum += value;
    }
    double mean = sum / counts.length;
    double squares = 0;
    for (char value : counts) {
      squares += (value - mean) * (value - mean);
    }
    return new double[] {mean, squares / (counts.length - 1)};
  }

  @ParameterizedTest(name = "{0} electrons")
  @CsvSource({"5", "40", "200", "3000"})
  void flatLightHasPhotonTransferNoise(double electrons) {
    NightPlan plan = Plans.with("camera.widthPx", "400", "camera.heightPx", "300");
    float[] light = new float[400 * 300];
    java.util.Arrays.fill(light, (float) electrons);
    Exposure exposure = Exposure.timetable(plan).get(0);
    char[] counts = Sensor.expose(plan.camera(), plan.seed(), exposure, light);
    double[] found = meanAndVariance(counts);
    double gain = 2;
    double variance = electrons / (gain * gain) + 9 / (gain * gain) + 1.0 / 12;
    assertEquals(64 + electrons / gain, found[0], 5 * Math.sqrt(variance / light.length));
    assertEquals(variance, found[1], 0.025 * variance);
  }

  /** Twice the ISO halves the electrons of a count. */
  @Test
  void isoRaisesTheGain() {
    CameraPlan camera = Plans.with().camera();
    assertEquals(2, camera.electronsPerCount(800), 1e-12);
    assertEquals(0.5, camera.electronsPerCount(3200), 1e-12);
  }

  /** Poisson: mean = variance, and P(0) = e^-μ. */
  @Test
  void fewPhotonsFollowPoisson() {
    SplittableRandom chance = new SplittableRandom(3);
    int draws = 200_000;
    double sum = 0;
    double squares = 0;
    int none = 0;
    for (int i = 0; i < draws; i++) {
      double photons = Sensor.photons(2.5, chance);
      sum += photons;
      squares += photons * photons;
      none += photons == 0 ? 1 : 0;
    }
    double mean = sum / draws;
    assertEquals(2.5, mean, 0.02);
    assertEquals(2.5, squares / draws - mean * mean, 0.05);
    assertEquals(Math.exp(-2.5), none / (double) draws, 0.002);
  }

  @Test
  void hotPixelsStayWhereTheyAre() {
    NightPlan plan =
        Plans.with("camera.hotPixelsPerMegapixel", "2000", "stars.starsPerSquareDegree", "0");
    NightSimulator simulator = new NightSimulator(plan);
    SimFrame first = simulator.render(1);
    SimFrame second = simulator.render(2);
    int hot = 0;
    for (int y = 0; y < first.heightPx(); y++) {
      for (int x = 0; x < first.widthPx(); x++) {
        if (first.at(x, y) > 1000) {
          hot++;
          assertTrue(second.at(x, y) > 900);
        }
      }
    }
    assertTrue(hot > 5, "hot pixels seen: " + hot);
  }

  /**
   * The empty sky on the axis: 10^(-0.4 mag) of the zero point for each cm² of aperture, s of
   * exposure and arcsec² of pixel; pixel 206265 p/f arcsec.
   */
  @Test
  void skyBrightnessFollowsMagnitudes() {
    NightPlan plan = Plans.with("stars.starsPerSquareDegree", "0", "aim.altitudeDeg", "90");
    float[] light = new NightSimulator(plan).light(1);
    double pixel = 206264.806 * 6e-3 / 24;
    double aperture = Math.PI / 4 * Math.pow(24 / 2.8 / 10, 2);
    double expected = 1e6 * aperture * 20 * pixel * pixel * Math.pow(10, -0.4 * 21);
    assertEquals(expected, light[80 * 240 + 120], 0.002 * expected);
  }
}
