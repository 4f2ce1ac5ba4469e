package rondure.sim;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import rondure.base.Orientation;
import rondure.base.RobustStats;

/** Whole frames against what they must show. */
class NightSimulatorTest {
  private static final int WIDTH = 420;
  private static final int HEIGHT = 300;

  private static NightPlan plan(String... changes) {
    String[] all = new String[changes.length + 6];
    System.arraycopy(
        new String[] {
          "camera.widthPx",
          "" + WIDTH,
          "camera.heightPx",
          "" + HEIGHT,
          "camera.pixelPitchMicrons",
          "24"
        },
        0,
        all,
        0,
        6);
    System.arraycopy(changes, 0, all, 6, changes.length);
    return Plans.with(all);
  }

  /** Brute force: every lone star's light, summed over its pixels, has the moments of the truth. */
  @Test
  void paintedStarsHaveTheMomentsOfTheTruth() {
    int checked = 0;
    for (int seed = 1; seed <= 5; seed++) {
      NightSimulator simulator = new NightSimulator(softPlan(seed));
      float[] light = simulator.light(1);
      List<StarTruth> stars = simulator.render(1).truth().stars();
      for (StarTruth star : stars) {
        if (isLone(star, stars)) {
          checked++;
          double[] sums = sums(light, star);
          assertEquals(star.electrons(), sums[0], 0.002 * star.electrons() + 1);
          assertEquals(star.xPx(), sums[1], 0.01);
          assertEquals(star.yPx(), sums[2], 0.01);
          assertEquals(star.xxPx2(), sums[3], 0.03);
          assertEquals(star.xyPx2(), sums[4], 0.03);
          assertEquals(star.yyPx2(), sums[5], 0.03);
        }
      }
    }
    assertTrue(checked >= 10, "lone stars seen: " + checked);
  }

  /** Few stars on a black sky, blurred by everything at once. */
  private static NightPlan softPlan(int seed) {
    return plan(
        "seed", "" + seed,
        "sky.zenithMagPerArcsec2", "40",
        "stars.starsPerSquareDegree", "0.08",
        "stars.faintestMagnitude", "5",
        "lens.comaPx", "0.8",
        "lens.curvatureMicrons", "120",
        "lens.astigmatismMicrons", "90",
        "lens.tiltRightMicrons", "40",
        "focusMicrons", "[{\"minutes\":0,\"value\":60}]",
        "events",
            """
            [{"kind":"gust","firstFrame":1,"lastFrame":1,"amplitudePx":1.5,"acrossShare":0.4,
              "frequencyHz":5,"directionDeg":70}]""");
  }

  private static boolean isLone(StarTruth star, List<StarTruth> stars) {
    boolean inside =
        star.xPx() > 26 && star.xPx() < WIDTH - 27 && star.yPx() > 26 && star.yPx() < HEIGHT - 27;
    return inside
        && stars.stream()
            .noneMatch(
                o ->
                    o != star
                        && Math.abs(o.xPx() - star.xPx()) < 45
                        && Math.abs(o.yPx() - star.yPx()) < 45);
  }

  /** Light, centre and moments of the 45 px square around a star. */
  private static double[] sums(float[] light, StarTruth star) {
    double sum = 0;
    double sumX = 0;
    double sumY = 0;
    double xx = 0;
    double xy = 0;
    double yy = 0;
    for (int y = (int) star.yPx() - 22; y <= star.yPx() + 22; y++) {
      for (int x = (int) star.xPx() - 22; x <= star.xPx() + 22; x++) {
        double value = light[y * WIDTH + x];
        double dx = x - star.xPx();
        double dy = y - star.yPx();
        sum += value;
        sumX += value * dx;
        sumY += value * dy;
        xx += value * dx * dx;
        xy += value * dx * dy;
        yy += value * dy * dy;
      }
    }
    return new double[] {
      sum, star.xPx() + sumX / sum, star.yPx() + sumY / sum, xx / sum, xy / sum, yy / sum
    };
  }

  @Test
  void samePlanGivesTheSameCounts() {
    NightPlan plan = plan("camera.hotPixelsPerMegapixel", "50");
    SimFrame once = NightSimulator.render(plan, 2);
    SimFrame again = NightSimulator.render(plan, 2);
    assertArrayEquals(once.counts(), again.counts());
    assertEquals(once.truth(), again.truth());
    SimFrame other = NightSimulator.render(plan("seed", "8"), 2);
    assertFalse(java.util.Arrays.equals(once.counts(), other.counts()));
  }

  /**
   * Star counts: N(brighter than m) ∝ 10^(0.5 m), the plan's law; two magnitudes are a factor 10.
   */
  @Test
  void brightStarsAreRare() {
    List<StarCatalogue.CatalogueStar> stars =
        StarCatalogue.of(
            Plans.with("stars.starsPerSquareDegree", "10", "stars.brightestMagnitude", "-2"));
    long faint = stars.stream().filter(s -> s.magnitude() < 7).count();
    long bright = stars.stream().filter(s -> s.magnitude() < 5).count();
    assertEquals(10, (double) faint / bright, 0.6);
    long north = stars.stream().filter(s -> s.z() > 0.5).count();
    assertEquals(0.25, north / (double) stars.size(), 0.005);
  }

  /** One magnitude of cloud leaves 10^-0.4 = 0.398 of a star's light (Pogson). */
  @Test
  void evenCloudDimsByItsMagnitudes() {
    NightPlan plan =
        plan(
            "events",
            """
            [{"kind":"cloud","firstFrame":2,"lastFrame":2,"opacityMag":1,"patchiness":0,
              "glow":0.5}]""");
    NightSimulator simulator = new NightSimulator(plan);
    FrameTruth clear = simulator.render(1).truth();
    FrameTruth cloudy = simulator.render(2).truth();
    Map<Integer, Double> before =
        clear.stars().stream().collect(Collectors.toMap(StarTruth::number, StarTruth::electrons));
    double[] ratios =
        cloudy.stars().stream()
            .filter(s -> before.containsKey(s.number()))
            .mapToDouble(s -> s.electrons() / before.get(s.number()))
            .toArray();
    assertTrue(ratios.length > 20);
    assertEquals(0.398, RobustStats.median(ratios), 0.01);
    assertEquals(0.398, cloudy.transparency(), 0.001);
    assertEquals(TrueCause.HAZE, cloudy.cause());
    assertEquals(TrueCause.NONE, clear.cause());
  }

  @Test
  void lampsStayWhileStarsMoveAndShakeWithTheCamera() {
    NightPlan plan =
        plan(
            "aim.altitudeDeg", "12",
            "foreground",
                """
                {"horizonDeg":4,"reliefDeg":0,"treesDeg":0,"brightness":0.1,"texture":0.3,
                 "lights":[{"azimuthDeg":182,"altitudeDeg":2,"magnitude":0}]}""",
            "events",
                """
                [{"kind":"knock","frame":3,"atShare":0,"shiftXPx":7,"shiftYPx":-3,"ringPx":0,
                  "ringHz":5,"ringDecaySeconds":1}]""");
    NightSimulator simulator = new NightSimulator(plan);
    FrameTruth first = simulator.render(1).truth();
    FrameTruth second = simulator.render(2).truth();
    FrameTruth third = simulator.render(3).truth();
    StarTruth lamp = first.lights().get(0);
    assertEquals(lamp.xPx(), second.lights().get(0).xPx(), 1e-3);
    assertEquals(lamp.yPx(), second.lights().get(0).yPx(), 1e-3);
    assertEquals(lamp.xPx() + 7, third.lights().get(0).xPx(), 0.15);
    assertEquals(lamp.yPx() - 3, third.lights().get(0).yPx(), 0.15);
    StarTruth star = first.stars().get(0);
    StarTruth later =
        second.stars().stream().filter(s -> s.number() == star.number()).findFirst().orElseThrow();
    assertTrue(later.xPx() - star.xPx() > 1, "southern stars move to the right");
  }

  /** Held upright or on its side, the land is at the bottom of the displayed picture. */
  @Test
  void landIsAtTheBottomHoweverTheCameraIsHeld() {
    for (Orientation held :
        List.of(
            Orientation.NORMAL,
            Orientation.ROTATED_90_CW,
            Orientation.ROTATED_180,
            Orientation.ROTATED_270_CW)) {
      NightPlan plan =
          plan(
              "aim.altitudeDeg", "6",
              "aim.held", "\"" + held + "\"",
              "sky.zenithMagPerArcsec2", "20",
              "foreground",
                  """
                  {"horizonDeg":2,"reliefDeg":0,"treesDeg":0,"brightness":0.1,"texture":0.3}""");
      SimFrame frame = NightSimulator.render(plan, 1);
      double top = 0;
      double bottom = 0;
      for (int y = 0; y < HEIGHT; y++) {
        for (int x = 0; x < WIDTH; x++) {
          double shownY = held.displayY(x, y, WIDTH, HEIGHT);
          int shownHeight = held.displayHeightPx(WIDTH, HEIGHT);
          top += shownY < shownHeight * 0.1 ? frame.at(x, y) - 64 : 0;
          bottom += shownY > shownHeight * 0.9 ? frame.at(x, y) - 64 : 0;
        }
      }
      assertTrue(bottom < 0.3 * top, held + ": bottom " + bottom + ", top " + top);
    }
  }

  @Test
  void longExposureIsNamedTrailing() {
    NightPlan plan =
        plan("shots", "[{\"count\":1,\"exposureSeconds\":90,\"intervalSeconds\":95,\"iso\":800}]");
    FrameTruth truth = NightSimulator.render(plan, 1).truth();
    assertEquals(TrueCause.TRAILING, truth.cause());
    // Facing the equator at 24 mm with 24 µm: 90 s of 7.2921e-5 rad/s are 6.563 px on the axis.
    double shortest = truth.stars().stream().mapToDouble(StarTruth::trailPx).min().orElseThrow();
    assertEquals(6.563, shortest, 0.25);
  }

  @Test
  void dewTakesLightAndAddsAHalo() {
    NightPlan plan =
        plan(
            "events",
            """
            [{"kind":"dew","firstFrame":2,"lastFrame":3,"opacityMag":1.2,"haloShare":0.4,
              "haloFwhmPx":9}]""");
    NightSimulator simulator = new NightSimulator(plan);
    FrameTruth clear = simulator.render(1).truth();
    FrameTruth wet = simulator.render(3).truth();
    assertEquals(0, clear.sharesPx2().haze(), 1e-9);
    double halo = 0.4 * Math.pow(9 / 2.354820, 2);
    assertEquals(halo, wet.sharesPx2().haze(), 1e-3);
    assertEquals(clear.sharesPx2().core(), wet.sharesPx2().core(), 1e-9);
    assertEquals(TrueCause.HAZE, wet.cause());
  }

  @Test
  void frameOutsideTheNightIsRefused() {
    NightSimulator simulator = new NightSimulator(plan());
    assertThrows(IllegalArgumentException.class, () -> simulator.render(0));
    assertThrows(IllegalArgumentException.class, () -> simulator.render(4));
  }
}
