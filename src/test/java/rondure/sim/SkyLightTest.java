package rondure.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SkyLightTest {

  /** Kasten &amp; Young 1989 (formula from memory), worked out apart from this code. */
  @ParameterizedTest
  @CsvSource({"30, 1.99429, 1e-5", "10, 5.5860, 1e-4", "0, 37.920, 1e-3"})
  void theAirGrowsTowardsTheHorizonAsPublished(double altitudeDeg, double airmass, double error) {
    assertEquals(airmass, SkyLight.airmass(altitudeDeg), error);
  }
}
