package rondure.night;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import org.junit.jupiter.api.Test;

/** Expected values worked by hand from the definition. */
class PausesTest {
  @Test
  void aWaitOfThreeStepsIsAPause() {
    assertArrayEquals(
        new boolean[] {false, false, false, true, false},
        Pauses.before(new double[] {0, 10, 20, 50, 60}, new double[] {8, 8, 8, 8, 8}, 2));
  }

  @Test
  void longExposuresBetweenShortOnesAreNoPause() {
    double[] starts = {0, 5, 19, 24, 38, 43};
    double[] exposures = {3, 12, 3, 12, 3, 12};
    assertArrayEquals(new boolean[6], Pauses.before(starts, exposures, 2));
  }

  @Test
  void aPauseBesideLongExposuresShows() {
    double[] starts = {0, 5, 19, 64, 78, 83};
    double[] exposures = {3, 12, 3, 12, 3, 12};
    assertArrayEquals(
        new boolean[] {false, false, false, true, false, false},
        Pauses.before(starts, exposures, 2));
  }

  @Test
  void aSingleFrameHasNone() {
    assertArrayEquals(new boolean[1], Pauses.before(new double[] {0}, new double[] {8}, 2));
  }
}
