package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Whose turning tells the time: a tripod that moves proves no clock wrong. */
class SkyTimesTest {
  private static final double OMEGA = SkyMotion.SIDEREAL_RATE_RAD_PER_S;
  private static final Vec ERRORS = new Vec(1e-5, 1e-5, 3e-5);
  private static final Vec SKY = new Vec(0.3, 0.9, 0.1).withLength(OMEGA);

  private static List<Pose> poses(double[] seconds, Vec[] turns) {
    List<Pose> poses = new ArrayList<>();
    for (int i = 0; i < seconds.length; i++) {
      poses.add(new Pose(i, seconds[i], turns[i].exp(), ERRORS));
    }
    return poses;
  }

  @Test
  void aHeadThatBeginsToDroopLeavesTheClockRight() {
    double[] seconds = {0, 7, 14, 21, 28, 35};
    Vec[] turns = new Vec[6];
    Vec droop = new Vec(3 * OMEGA, -0.5 * OMEGA, 0);
    for (int i = 0; i < 6; i++) {
      turns[i] = SKY.times(seconds[i]).plus(droop.times(Math.max(0, seconds[i] - 17)));
    }
    SkyTimes times = SkyTimes.of(poses(seconds, turns), 0.01);
    assertTrue(times.byClock());
    assertEquals(35, times.poses().get(5).seconds(), 1e-9);
  }

  @Test
  void knocksInTwoOfSixFramesLeaveTheClockRight() {
    double[] seconds = {0, 7, 14, 21, 28, 35};
    Vec[] turns = new Vec[6];
    Vec[] aside = {
      Vec.ZERO,
      Vec.ZERO,
      new Vec(2e-3, 1e-3, 0),
      new Vec(4e-3, 2e-3, 0),
      new Vec(2e-3, 5e-3, 0),
      new Vec(1e-3, 7e-3, 0)
    };
    for (int i = 0; i < 6; i++) {
      turns[i] = SKY.times(seconds[i]).plus(aside[i]);
    }
    assertTrue(SkyTimes.of(poses(seconds, turns), 0.01).byClock());
  }

  @Test
  void aClockAgainstWhichACalmSkyTurnsUnevenlyIsNotUsed() {
    double[] told = {0, 3, 40, 44, 90, 92};
    Vec[] turns = new Vec[6];
    for (int i = 0; i < 6; i++) {
      turns[i] = SKY.times(20.0 * i);
    }
    assertFalse(SkyTimes.of(poses(told, turns), 0.01).byClock());
  }
}
