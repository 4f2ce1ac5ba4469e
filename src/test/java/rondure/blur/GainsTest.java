package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import org.junit.jupiter.api.Test;

/** Cameras change exposures by thirds of a stop, 2^(1/3) = 1.26 (ISO 12232, common practice). */
class GainsTest {
  private static void alike(String expected, double... levels) {
    boolean[] frames = new boolean[levels.length];
    for (int i = 0; i < frames.length; i++) {
      frames[i] = expected.charAt(i) == '+';
    }
    assertArrayEquals(frames, Gains.alike(levels));
  }

  @Test
  void anotherExposureIsNotTakenForTheScenes() {
    alike("++++--", 100, 101, 99, 100, 50, 50);
    alike("+-+-+", 100, 25, 100, 25, 100);
    alike("+++--", 100, 100, 100, 79, 63); // two thirds of a stop in two steps
  }

  @Test
  void dewThatDimsTheSkyFromFrameToFrameIsNoOtherExposure() {
    alike("++++++", 100, 84, 70, 59, 50, 42);
    alike("++++++", 100, 100, 78, 61, 48, 37); // steps alike, each beyond a third of a stop
    alike("--+++-", 100, 100, 25, 25, 25, 0);
  }
}
