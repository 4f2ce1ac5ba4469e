package rondure.sim;

import java.util.List;

/**
 * One exposure cut into time steps of equal length, with the attitudes of sky and ground in each.
 *
 * <p>Attitudes are matrices to camera axes: from equatorial for the stars, from ground (east,
 * north, up) for the land.
 */
final class Passage {
  private static final int FEWEST_STEPS = 64;
  private static final int MOST_STEPS = 60_000;
  private static final double STEPS_PER_CYCLE = 24;
  private static final double STEPS_PER_PX = 8;

  private final double[][] sky;
  private final double[][] ground;
  private final double[][] calmSky;
  private final double[] skyAtMid;
  private final double[] groundAtMid;

  private Passage(
      double[][] sky,
      double[][] ground,
      double[][] calmSky,
      double[] skyAtMid,
      double[] groundAtMid) {
    this.sky = sky;
    this.ground = ground;
    this.calmSky = calmSky;
    this.skyAtMid = skyAtMid;
    this.groundAtMid = groundAtMid;
  }

  static Passage of(NightPlan plan, List<Exposure> timetable, Exposure exposure) {
    CameraMotion motion = new CameraMotion(plan, timetable, exposure);
    Attitude attitude = Attitude.of(plan, timetable, exposure);
    int steps = steps(plan, exposure, motion.highestHz());
    double[][] sky = new double[steps][];
    double[][] ground = new double[steps][];
    double[][] calmSky = new double[steps][];
    double[] still = motion.turn(exposure.midSeconds());
    for (int i = 0; i < steps; i++) {
      double t = exposure.startSeconds() + (i + 0.5) * exposure.openSeconds() / steps;
      double[] moved = motion.turn(t);
      sky[i] = Turn.times(moved, attitude.cameraFromEquatorial(t));
      ground[i] = Turn.times(moved, attitude.cameraFromGround(t));
      calmSky[i] = Turn.times(still, attitude.cameraFromEquatorial(t));
    }
    double mid = exposure.midSeconds();
    return new Passage(
        sky,
        ground,
        calmSky,
        Turn.times(still, attitude.cameraFromEquatorial(mid)),
        Turn.times(still, attitude.cameraFromGround(mid)));
  }

  private static int steps(NightPlan plan, Exposure exposure, double highestHz) {
    double turned = 2 * Math.PI * exposure.openSeconds() / SkyTurn.SIDEREAL_DAY_SECONDS;
    double longestPx = 2 * turned * plan.pixelsPerRadian();
    double wanted =
        Math.max(STEPS_PER_CYCLE * highestHz * exposure.openSeconds(), STEPS_PER_PX * longestPx);
    return (int) Math.min(MOST_STEPS, Math.max(FEWEST_STEPS, Math.ceil(wanted)));
  }

  int steps() {
    return sky.length;
  }

  /** Attitude of the sky in each step, with everything that moves. */
  double[][] sky() {
    return sky;
  }

  /** Attitude of the land in each step. */
  double[][] ground() {
    return ground;
  }

  /** Attitude of the sky in each step if the camera had stood as it did at mid-exposure. */
  double[][] calmSky() {
    return calmSky;
  }

  double[] skyAtMid() {
    return skyAtMid;
  }

  double[] groundAtMid() {
    return groundAtMid;
  }

  /** Aim in force and, on a tracking mount, the sky it was locked to. */
  private record Attitude(AimPlan aim, double latitudeDeg, boolean tracking, double lockedSeconds) {

    static Attitude of(NightPlan plan, List<Exposure> timetable, Exposure exposure) {
      AimPlan aim = plan.aim();
      double locked = 0;
      for (NightEvent event : plan.events()) {
        if (event instanceof NightEvent.ReAim reAim && reAim.frame() <= exposure.number()) {
          aim = reAim.aim();
          locked = timetable.get(reAim.frame() - 1).startSeconds();
        }
      }
      return new Attitude(aim, plan.sky().latitudeDeg(), plan.tracking(), locked);
    }

    double[] cameraFromEquatorial(double nightSeconds) {
      double when = tracking ? lockedSeconds : nightSeconds;
      return Turn.times(
          SkyTurn.cameraFromGround(aim), SkyTurn.groundFromEquatorial(latitudeDeg, when));
    }

    double[] cameraFromGround(double nightSeconds) {
      if (!tracking) {
        return SkyTurn.cameraFromGround(aim);
      }
      return Turn.times(
          cameraFromEquatorial(nightSeconds),
          Turn.transposed(SkyTurn.groundFromEquatorial(latitudeDeg, nightSeconds)));
    }
  }
}
