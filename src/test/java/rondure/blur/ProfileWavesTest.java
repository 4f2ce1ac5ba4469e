package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Transforms of cores and discs against scipy 1.x (special.j0, j1, kv, gamma; computed once). */
class ProfileWavesTest {
  private static final double X = 2.7;

  @Test
  void theTransformOfADiscIsThatOfScipysBesselFunctions() {
    assertEquals(0.3000792705, RoundWaves.j0(7), 1e-4);
    assertEquals(2 * -0.3275791376 / 5, RoundWaves.disc(5), 1e-4);
    assertEquals(1, RoundWaves.disc(0), 1e-12);
  }

  @Test
  void theTransformOfAMoffatStarIsTwoTimesHalfXToTheNuTimesKNuOverGamma() {
    assertEquals(0.2486603971, at(CoreWaves.MOFFAT_2_5, 2.5), 1e-9);
    assertEquals(0.4119697931, at(CoreWaves.MOFFAT_3_5, 3.5), 1e-9);
    assertEquals(0.5328187461, at(CoreWaves.MOFFAT_4_5, 4.5), 1e-9);
    assertEquals(0.6802809093, at(CoreWaves.MOFFAT_6_5, 6.5), 1e-9);
  }

  private static double at(CoreWaves core, double beta) {
    double alpha = 1 / (2 * Math.sqrt(Math.pow(2, 1 / beta) - 1));
    return core.at(X / alpha, 1);
  }

  @Test
  void theTransformOfAGaussianIsAGaussian() {
    assertEquals(Math.exp(-0.5), CoreWaves.GAUSSIAN.at(1, 2.354820045), 1e-9);
  }
}
