package rondure.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import rondure.base.Moments;

/** The camera's own motion during a 20 s exposure, through the whole chain to a star's path. */
class CameraMotionTest {

  /** Moments of the path of a star near the centre, and of the sky's part of it. */
  private static Moments[] paths(NightPlan plan, int number) {
    List<Exposure> timetable = Exposure.timetable(plan);
    Passage passage = Passage.of(plan, timetable, timetable.get(number - 1));
    double[] star = Turn.apply(Turn.transposed(passage.skyAtMid()), new double[] {0, 0, 1});
    PaintedStar.Path path = new PaintedStar.Path(new ImagePoint(plan), passage.steps());
    path.follow(passage.sky(), star);
    Moments moved = path.moments();
    path.follow(passage.calmSky(), star);
    return new Moments[] {moved, path.moments()};
  }

  private static NightPlan mounted(String event) {
    return Plans.with("tracking", "true", "events", "[" + event + "]");
  }

  /** Sinusoid of amplitude A, many cycles: A²/2. */
  @Test
  void gustAddsHalfTheAmplitudesSquare() {
    Moments path =
        paths(
            mounted(
                """
                {"kind":"gust","firstFrame":2,"lastFrame":2,"amplitudePx":2,"acrossShare":0,
                 "frequencyHz":6.5,"directionDeg":30}"""),
            2)[0];
    assertEquals(2.0, path.majorPx2(), 0.01);
    assertEquals(0, path.minorPx2(), 1e-6);
    assertEquals(30, Math.toDegrees(path.positionAngleRad()), 0.05);
  }

  @Test
  void gustTouchesOnlyItsFrames() {
    NightPlan plan =
        mounted(
            """
            {"kind":"gust","firstFrame":2,"lastFrame":2,"amplitudePx":2,"acrossShare":0,
             "frequencyHz":6.5,"directionDeg":30}""");
    assertEquals(0, paths(plan, 1)[0].meanPx2(), 1e-9);
    assertEquals(0, paths(plan, 3)[0].meanPx2(), 1e-9);
  }

  /** A₀ e^(-t/τ) sin: A₀²τ(1 - e^(-2T/τ))/(4T); 10 px, 1 s, 20 s: 1.250. */
  @Test
  void ringingAddsTheTextbookVariance() {
    Moments path =
        paths(
            mounted(
                """
                {"kind":"knock","frame":1,"atShare":0,"shiftXPx":0,"shiftYPx":0,"ringPx":10,
                 "ringHz":6,"ringDecaySeconds":1}"""),
            1)[0];
    assertEquals(1.250, path.xxPx2(), 0.01);
    assertEquals(0, path.yyPx2(), 1e-6);
  }

  /** Two places d apart, shares s and 1 - s: d² s (1 - s). */
  @Test
  void knockMakesTwoImages() {
    NightPlan plan =
        mounted(
            """
            {"kind":"knock","frame":2,"atShare":0.25,"shiftXPx":6,"shiftYPx":8,"ringPx":0,
             "ringHz":6,"ringDecaySeconds":0.1}""");
    assertEquals(100 * 0.25 * 0.75, paths(plan, 2)[0].majorPx2(), 0.3);
    assertEquals(0, paths(plan, 3)[0].meanPx2(), 1e-6);
  }

  /**
   * Steady sag and the sky's drift add as velocities: 5.8337 px of sky to the right on the equator
   * and 2 px of sag the same way give (L + s)²/12.
   */
  @Test
  void sagAddsToTheSkysVelocity() {
    NightPlan plan =
        Plans.with(
            "events",
            """
            [{"kind":"droop","firstFrame":1,"lastFrame":3,"pxPerMinute":6,"directionDeg":0}]""");
    Moments[] moved = paths(plan, 2);
    assertEquals(5.8337 * 5.8337 / 12, moved[1].xxPx2(), 0.004);
    assertEquals(7.8337 * 7.8337 / 12, moved[0].xxPx2(), 0.01);
  }

  /** e^(-2t/τ) averaged: a hand's 4 Hz tremor decays, so long exposures forget it. */
  @Test
  void handPressFadesDuringTheExposure() {
    NightPlan plan =
        mounted(
            """
            {"kind":"handPress","firstFrame":1,"lastFrame":1,"amplitudePx":4,"frequencyHz":4,
             "decaySeconds":2}""");
    Moments path = paths(plan, 1)[0];
    double along = 16 * 2 / (4 * 20.0);
    assertEquals(along * 1.25, path.xxPx2() + path.yyPx2(), 0.03);
  }

  @Test
  void trackingMountHoldsTheStarsAndTurnsTheLand() {
    NightPlan plan = mounted("");
    List<Exposure> timetable = Exposure.timetable(plan);
    Passage first = Passage.of(plan, timetable, timetable.get(0));
    Passage third = Passage.of(plan, timetable, timetable.get(2));
    double[] ahead = {0, 0, 1};
    double[] star = Turn.apply(Turn.transposed(first.skyAtMid()), ahead);
    double[] lamp = Turn.apply(Turn.transposed(first.groundAtMid()), ahead);
    assertEquals(1, Turn.apply(third.skyAtMid(), star)[2], 1e-12);
    double turned = Math.acos(Turn.apply(third.groundAtMid(), lamp)[2]);
    assertEquals(50 * 15.0410686 / 206264.806, turned, 1e-6);
  }
}
