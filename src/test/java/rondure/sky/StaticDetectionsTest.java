package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import rondure.base.Moments;
import rondure.sky.StaticReport.Finding;
import rondure.stars.Detection;
import rondure.stars.Refusal;
import rondure.stars.Star;
import rondure.stars.StarField;
import rondure.testing.Fields;

class StaticDetectionsTest {
  private static final int WIDTH = 3000;
  private static final int HEIGHT = 2000;
  private static final Moments STAR = Moments.round(0.9);
  private static final Moments HOT = Moments.round(0.09);
  private static final Camera CAMERA = Camera.rectilinear(2000, WIDTH, HEIGHT);

  /** A made-up scene: stars turned about the pole exactly, spots that stay, centroid noise. */
  private static final class SceneMaker {
    final Random random = new Random(7);
    Direction pole = new Aim(45, 180, 45).northPole();
    double gapSeconds = 32;
    boolean knowsFacts = true;
    boolean tracked;
    double driftPxPerFrame;
    double noisePx = 0.05;
    double seenShare = 0.95;
    int starCount = 150;
    final List<ImagePoint> lamps = new ArrayList<>();
    final List<ImagePoint> hotPixels = new ArrayList<>();

    List<ImagePoint> scatter(int count) {
      List<ImagePoint> points = new ArrayList<>();
      for (int i = 0; i < count; i++) {
        points.add(new ImagePoint(random.nextDouble() * WIDTH, random.nextDouble() * HEIGHT));
      }
      return points;
    }

    List<SceneFrame> frames(int count) {
      List<ImagePoint> stars = scatter(starCount);
      List<SceneFrame> frames = new ArrayList<>();
      for (int i = 0; i < count; i++) {
        frames.add(frame(stars, i));
      }
      return frames;
    }

    private SceneFrame frame(List<ImagePoint> starsAtStart, int index) {
      double seconds = index * gapSeconds;
      List<Star> stars = new ArrayList<>();
      for (ImagePoint start : starsAtStart) {
        Optional<ImagePoint> now =
            tracked
                ? Optional.of(new ImagePoint(start.xPx() + index * driftPxPerFrame, start.yPx()))
                : SkyMotion.positionAfter(CAMERA, pole, start, seconds);
        now.filter(p -> random.nextDouble() < seenShare)
            .ifPresent(p -> add(stars, p, noisePx, STAR));
      }
      lamps.forEach(p -> add(stars, p, noisePx, STAR));
      hotPixels.forEach(p -> add(stars, p, 0.01, HOT));
      StarField field = Fields.field(WIDTH, HEIGHT, stars, List.of());
      return knowsFacts
          ? new SceneFrame(field, Optional.of(seconds), Optional.of(speed()))
          : new SceneFrame(field, Optional.empty(), Optional.empty());
    }

    private double speed() {
      return SkyMotion.SIDEREAL_RATE_RAD_PER_S * CAMERA.focalLengthPx();
    }

    private void add(List<Star> stars, ImagePoint place, double noise, Moments shape) {
      double x = place.xPx() + noise * random.nextGaussian();
      double y = place.yPx() + noise * random.nextGaussian();
      if (x >= 0 && y >= 0 && x < WIDTH && y < HEIGHT) {
        stars.add(Fields.star(x, y, shape, 0.05));
      }
    }
  }

  private static int lampsLeft(StaticReport report, List<ImagePoint> places) {
    int left = 0;
    for (StarField field : report.fields()) {
      for (ImagePoint place : places) {
        left +=
            field.stars().stream()
                    .anyMatch(s -> place.distanceTo(new ImagePoint(s.xPx(), s.yPx())) < 0.5)
                ? 1
                : 0;
      }
    }
    return left;
  }

  @Test
  void lampsAndHotPixelsGoAndStarsStay() {
    SceneMaker maker = new SceneMaker();
    maker.lamps.addAll(maker.scatter(12));
    maker.hotPixels.addAll(maker.scatter(20));
    StaticReport report = StaticDetections.examine(maker.frames(12));
    assertEquals(Finding.SKY_MOVES, report.finding());
    assertEquals(12, report.count(StaticSpot.Kind.GROUND_LIGHT));
    assertEquals(20, report.count(StaticSpot.Kind.HOT_PIXEL));
    assertEquals(0, lampsLeft(report, maker.lamps));
    int removed = report.removed().stream().mapToInt(n -> n).sum();
    assertTrue(removed <= 12 * 32 + 3, "stars removed by mistake: " + (removed - 12 * 32));
    assertEquals(32, report.fields().get(0).refused().get(Refusal.STATIC), 2);
  }

  /**
   * Lights outside the sky that stay are lamps; those that move with the sky are stars behind bare
   * branches. Lamps that hang in the sky join them; hot pixels do not.
   */
  @Test
  void groundLightsAreThoseThatStay() {
    SceneMaker maker = new SceneMaker();
    maker.lamps.addAll(maker.scatter(6));
    maker.hotPixels.addAll(maker.scatter(10));
    Star lamp = Fields.star(500, 1900, STAR, 0.05);
    List<SceneFrame> frames = new ArrayList<>();
    for (SceneFrame frame : maker.frames(12)) {
      double moved = 2000 + 5.0 * frames.size();
      List<Star> lights = List.of(lamp, Fields.star(moved, 1900, STAR, 0.05));
      frames.add(
          new SceneFrame(
              withLights(frame.field(), lights),
              frame.midExposureSeconds(),
              frame.skySpeedPxPerS()));
    }
    StaticReport report = StaticDetections.examine(frames);
    assertEquals(Finding.SKY_MOVES, report.finding());
    for (StarField field : report.fields()) {
      assertEquals(7, field.groundLights().size(), 1);
      assertTrue(field.groundLights().contains(lamp));
      assertTrue(field.groundLights().stream().allMatch(s -> s.xPx() != 2000));
    }
  }

  /** The lights are detections outside the sky too. */
  private static StarField withLights(StarField field, List<Star> lights) {
    List<Detection> others =
        lights.stream()
            .map(s -> new Detection(s.xPx(), s.yPx(), s.fluxCounts(), Refusal.NOT_SKY))
            .toList();
    return new StarField(
        field.widthPx(),
        field.heightPx(),
        field.stars(),
        others,
        field.refused(),
        field.sky(),
        field.mask(),
        List.of(),
        lights);
  }

  @Test
  void withoutFactsTheStarsThemselvesShowThatTheSkyMoved() {
    SceneMaker maker = new SceneMaker();
    maker.knowsFacts = false;
    maker.lamps.addAll(maker.scatter(12));
    StaticReport report = StaticDetections.examine(maker.frames(6));
    assertEquals(Finding.SKY_MOVES, report.finding());
    assertEquals(12, report.spots().size());
  }

  @Test
  void threeFramesAreEnough() {
    SceneMaker maker = new SceneMaker();
    maker.lamps.addAll(maker.scatter(5));
    StaticReport report = StaticDetections.examine(maker.frames(3));
    assertEquals(5, report.spots().size());
    assertEquals(Finding.CANNOT_TELL, StaticDetections.examine(maker.frames(1)).finding());
  }

  /** A short lens and short gaps: 0.3 px from frame to frame, several px over the set. */
  @Test
  void starsThatCreepByLessThanAPixelAFrameAreNotStatic() {
    for (boolean facts : new boolean[] {true, false}) {
      SceneMaker maker = new SceneMaker();
      maker.gapSeconds = 2.1;
      maker.knowsFacts = facts;
      maker.seenShare = 0.6;
      maker.noisePx = 0.15;
      maker.lamps.addAll(maker.scatter(4));
      StaticReport report = StaticDetections.examine(maker.frames(40));
      assertEquals(Finding.SKY_MOVES, report.finding());
      assertEquals(4, report.spots().size(), "facts known: " + facts);
      assertEquals(0, lampsLeft(report, maker.lamps));
    }
  }

  @Test
  void aShortSpanProvesNothing() {
    SceneMaker maker = new SceneMaker();
    maker.gapSeconds = 1.2;
    StaticReport report = StaticDetections.examine(maker.frames(4));
    assertEquals(0, report.removed().stream().mapToInt(n -> n).sum());
    maker.knowsFacts = false;
    report = StaticDetections.examine(maker.frames(4));
    assertEquals(Finding.SKY_STAYS, report.finding());
    assertEquals(0, report.removed().stream().mapToInt(n -> n).sum());
  }

  @Test
  void starsNearThePoleAreKept() {
    SceneMaker maker = new SceneMaker();
    maker.pole = new Direction(0, 0, 1);
    maker.lamps.addAll(maker.scatter(6));
    StaticReport report = StaticDetections.examine(maker.frames(60));
    assertEquals(Finding.SKY_MOVES, report.finding());
    assertEquals(0, lampsLeft(report, maker.lamps));
    assertTrue(report.spots().size() <= 7, "spots: " + report.spots().size());
  }

  @Test
  void aTrackingMountKeepsItsStars() {
    SceneMaker maker = new SceneMaker();
    maker.tracked = true;
    maker.gapSeconds = 120;
    StaticReport report = StaticDetections.examine(maker.frames(8));
    assertEquals(Finding.SKY_STAYS, report.finding());
    assertEquals(0, report.removed().stream().mapToInt(n -> n).sum());
    maker.starCount = 40;
    maker.driftPxPerFrame = 0.1;
    assertEquals(Finding.SKY_STAYS, StaticDetections.examine(maker.frames(5)).finding());
    maker.driftPxPerFrame = 0;
    assertEquals(Finding.SKY_STAYS, StaticDetections.examine(maker.frames(5)).finding());
  }

  @Test
  void lampsAlongTheHorizonAloneAreNoStars() {
    SceneMaker maker = new SceneMaker();
    maker.starCount = 0;
    maker.gapSeconds = 60;
    for (int i = 0; i < 50; i++) {
      maker.lamps.add(new ImagePoint(30 + 59.7 * i, 1800 + 90 * Math.sin(i)));
    }
    StaticReport report = StaticDetections.examine(maker.frames(5));
    assertEquals(Finding.NOTHING_FOLLOWS_THE_SKY, report.finding());
  }

  @Test
  void framesOfHotPixelsAloneFollowNothing() {
    for (boolean facts : new boolean[] {true, false}) {
      SceneMaker maker = new SceneMaker();
      maker.starCount = 0;
      maker.gapSeconds = 60;
      maker.knowsFacts = facts;
      maker.hotPixels.addAll(maker.scatter(40));
      StaticReport report = StaticDetections.examine(maker.frames(3));
      assertEquals(Finding.NOTHING_FOLLOWS_THE_SKY, report.finding());
      assertTrue(report.fields().stream().allMatch(field -> field.stars().isEmpty()));
      assertEquals(40, report.count(StaticSpot.Kind.HOT_PIXEL));
    }
  }

  @Test
  void aLampThatGoesOutMidwayIsStillRemovedWhileItShone() {
    SceneMaker maker = new SceneMaker();
    List<SceneFrame> frames = new ArrayList<>(maker.frames(30));
    ImagePoint lamp = new ImagePoint(700.3, 1500.7);
    for (int i = 0; i < 16; i++) {
      frames.set(i, withLamp(frames.get(i), lamp));
    }
    StaticReport report = StaticDetections.examine(frames);
    assertEquals(0, lampsLeft(report, List.of(lamp)));
  }

  private static SceneFrame withLamp(SceneFrame frame, ImagePoint lamp) {
    List<Star> stars = new ArrayList<>(frame.field().stars());
    stars.add(Fields.star(lamp.xPx(), lamp.yPx(), STAR, 0.05));
    return new SceneFrame(
        Fields.field(WIDTH, HEIGHT, stars, List.<Detection>of()),
        frame.midExposureSeconds(),
        frame.skySpeedPxPerS());
  }

  @Test
  void theGridFindsWhatASearchThroughAllFinds() {
    Random random = new Random(3);
    double[] xs = random.doubles(500, -5, 60).toArray();
    double[] ys = random.doubles(500, -5, 60).toArray();
    PointGrid grid = new PointGrid(xs, ys, 500);
    for (int probe = 0; probe < 2000; probe++) {
      double x = random.nextDouble() * 70 - 8;
      double y = random.nextDouble() * 70 - 8;
      int best = -1;
      for (int i = 0; i < 500; i++) {
        double distance = Math.hypot(xs[i] - x, ys[i] - y);
        if (distance <= 1 && (best < 0 || distance < Math.hypot(xs[best] - x, ys[best] - y))) {
          best = i;
        }
      }
      assertEquals(best, grid.nearest(x, y, 1));
    }
  }
}
