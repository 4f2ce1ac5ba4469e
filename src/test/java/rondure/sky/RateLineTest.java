package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * The sky's rate of 7.292115e-5 rad/s (IERS Conventions 2010, table 1.1) in attitudes of frames.
 */
class RateLineTest {
  private static final double SKY = 7.292115e-5;
  private static final double NOISE_RAD = 2e-6;
  private static final int FRAMES = 32;

  /** What the camera itself has turned by at a frame, rad about its first axis. */
  private interface Camera {
    double turnedRad(int frame);
  }

  private static RateLine line(Camera camera) {
    Random random = new Random(3);
    Rotation[] attitudes = new Rotation[FRAMES];
    double[] seconds = new double[FRAMES];
    for (int i = 0; i < FRAMES; i++) {
      seconds[i] = 60.0 * i;
      double x = SKY * seconds[i] + camera.turnedRad(i) + NOISE_RAD * random.nextGaussian();
      Vec turn = new Vec(x, NOISE_RAD * random.nextGaussian(), NOISE_RAD * random.nextGaussian());
      attitudes[i] = turn.exp();
    }
    return RateLine.of(attitudes, seconds, 0.01).orElseThrow();
  }

  @Test
  void aStillCameraShowsTheSkysRate() {
    assertEquals(1, line(i -> 0).rateShare(), 2e-4);
  }

  /**
   * A knock of a thousandth of a radian, and a head that sags for eight frames by twice as much.
   */
  @Test
  void knocksAndASagLeaveTheRateAsItIs() {
    double[] sag = new double[FRAMES];
    for (int i = 0; i < FRAMES; i++) {
      sag[i] = 2e-3 * Math.max(0, Math.min(8, i - 12)) / 8;
    }
    assertEquals(1, line(i -> i < 20 ? 0 : 1e-3).rateShare(), 4e-4);
    assertEquals(1, line(i -> sag[i]).rateShare(), 4e-4);
    assertEquals(1, line(i -> sag[i] + (i < 24 ? 0 : 1e-3)).rateShare(), 6e-4);
  }

  /** Clocks without seconds give two or more frames one time. */
  @Test
  void framesOfOneTimeLeaveTheRateAsItIs() {
    Random random = new Random(4);
    Rotation[] attitudes = new Rotation[FRAMES];
    double[] seconds = new double[FRAMES];
    for (int i = 0; i < FRAMES; i++) {
      seconds[i] = 60.0 * (i / 8);
      double x = SKY * seconds[i] + NOISE_RAD * random.nextGaussian();
      attitudes[i] = new Vec(x, NOISE_RAD * random.nextGaussian(), 0).exp();
    }
    assertEquals(1, RateLine.of(attitudes, seconds, 0.01).orElseThrow().rateShare(), 1e-3);
  }

  /**
   * Copies of one exposure, one of them with another exposure time in its facts: no turn at all.
   */
  @Test
  void attitudesThatAreAllTheSameTellNoRate() {
    Rotation[] attitudes = new Rotation[21];
    double[] seconds = new double[21];
    for (int i = 0; i < 21; i++) {
      attitudes[i] = Rotation.NONE;
      seconds[i] = i < 19 ? 5 : 36;
    }
    assertEquals(Optional.empty(), RateLine.of(attitudes, seconds, 0.01));
  }

  /** What never rests shows in the rate: nothing tells it from the sky. */
  @Test
  void aSteadyCreepIsInTheRate() {
    assertEquals(1.02, line(i -> 0.02 * SKY * 60 * i).rateShare(), 4e-4);
  }

  @Test
  void stretchesEndWhereAStepStandsOut() {
    double[][] turns = new double[10][3];
    double[] times = new double[10];
    for (int i = 0; i < 10; i++) {
      times[i] = 60 * i;
      turns[i][0] = 1e-3 * i + (i < 5 ? 0 : 0.1);
      turns[i][1] = (i % 2 == 0 ? 1e-6 : -1e-6);
    }
    assertArrayEquals(
        new int[] {0, 0, 0, 0, 0, 1, 1, 1, 1, 1}, TurnStretches.of(turns, times, 0.01));
  }

  /** A camera that is shaken in most frames has no stretches. */
  @Test
  void aRestlessCameraIsOneStretch() {
    double[][] turns = new double[12][3];
    double[] times = new double[12];
    Random random = new Random(5);
    for (int i = 0; i < 12; i++) {
      times[i] = 60 * i;
      turns[i][0] = 1e-3 * i + Math.pow(10, -5 + 4 * random.nextDouble());
    }
    assertArrayEquals(new int[12], TurnStretches.of(turns, times, 0.01));
  }
}
