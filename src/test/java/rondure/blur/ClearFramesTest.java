package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class ClearFramesTest {
  private static final double[] ERRORS = {0.02, 0.02, 0.02};

  private static double fall(double... lossMag) {
    return ClearFrames.fallMag(lossMag, ERRORS);
  }

  /** 0.61, 0.52, 0.44 of the light: 0.54, 0.71, 0.89 mag lost. */
  @Test
  void threeFramesThatDimSteadilyShowAFall() {
    assertEquals(0.35, fall(0.54, 0.71, 0.89), 1e-9);
    assertEquals(0, fall(0.89, 0.71, 0.54)); // clearing: the last frame is the measure
    assertEquals(0, fall(0, 0.02, 0.9)); // a cloud comes at once
    assertEquals(0, fall(0, 0.03, 0.06)); // within the errors
  }

  @Test
  void longerSetsShowWhereAFallBegan() {
    double[] errors = {0.02, 0.02, 0.02, 0.02};
    assertEquals(0, ClearFrames.fallMag(new double[] {0, 0.2, 0.4, 0.6}, errors));
  }
}
