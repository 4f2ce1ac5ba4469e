package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import rondure.base.Moments;
import rondure.sim.FrameTruth;
import rondure.sim.NightPlan;
import rondure.sim.NightSimulator;
import rondure.stars.Star;
import rondure.stars.StarField;
import rondure.testing.Fields;
import rondure.testing.SimNight;
import rondure.testing.TruthFields;

/** Registration against the simulator's truth: star lists made from it, no pixels rendered. */
class RegistrationTest {
  private static final double OMEGA = SkyMotion.SIDEREAL_RATE_RAD_PER_S;
  private static final String SHOTS = "shots";
  private static final String EVENTS = "events";

  private static final Map<NightPlan, List<FrameTruth>> TRUTHS = new HashMap<>();

  private record Night(double focalMm, double latitude, double azimuth, double altitude) {}

  private static final Night EAST = new Night(24, 46.5, 120, 35);

  private static NightPlan plan(Night night, int count, double interval, String... more) {
    List<String> changes =
        new ArrayList<>(
            List.of(
                "lens.focalLengthMm",
                "" + night.focalMm,
                "lens.distortionK1",
                "-0.01",
                "stars.faintestMagnitude",
                night.focalMm > 40 ? "10.5" : "9.5",
                "stars.starsPerSquareDegree",
                night.focalMm > 100 ? "30" : "4",
                "sky.latitudeDeg",
                "" + night.latitude,
                "aim.azimuthDeg",
                "" + night.azimuth,
                "aim.altitudeDeg",
                "" + night.altitude,
                SHOTS,
                shots(count, 5, interval)));
    changes.addAll(List.of(more));
    return SimNight.plan(changes.toArray(String[]::new));
  }

  private static String shots(int count, double exposure, double interval) {
    return "[{\"count\": %d, \"exposureSeconds\": %s, \"intervalSeconds\": %s, \"iso\": 800}]"
        .formatted(count, exposure, interval);
  }

  static Stream<Arguments> calmNights() {
    return Stream.of(
        Arguments.of("14 mm, south-east", plan(new Night(14, 46.5, 162, 40), 10, 60)),
        Arguments.of("24 mm, pole in the frame", plan(new Night(24, 46.5, 0, 45), 10, 40)),
        Arguments.of("50 mm, southern sky", plan(new Night(50, -35, 120, 45), 10, 20)),
        Arguments.of(
            "30 s that are 32 s, whole seconds only",
            plan(
                EAST,
                10,
                40.3,
                SHOTS,
                "[{\"count\": 10, \"exposureSeconds\": 30, \"trueExposureSeconds\": 32,"
                    + " \"intervalSeconds\": 40.3, \"iso\": 800}]",
                "files",
                "{\"withoutSubSeconds\": true}")));
  }

  static Stream<Arguments> moreCalmNights() {
    return Stream.of(
        Arguments.of("24 mm, equator in the frame", plan(new Night(24, 46.5, 180, 43), 10, 40)),
        Arguments.of("24 mm, southern pole", plan(new Night(24, -40, 180, 40), 10, 40)),
        Arguments.of("24 mm, portrait", plan(EAST, 10, 40, "aim.held", "\"ROTATED_90_CW\"")),
        Arguments.of("135 mm", plan(new Night(135, 46.5, 200, 45), 8, 8)),
        Arguments.of("ten minutes apart", plan(new Night(24, 46.5, 180, 40), 5, 600)));
  }

  @Tag("thorough")
  @ParameterizedTest(name = "{0}")
  @MethodSource("moreCalmNights")
  void thePoleOfMoreCalmNightsIsFoundWithinItsError(String name, NightPlan plan) {
    thePoleOfACalmNightIsFoundWithinItsError(name, plan);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("calmNights")
  void thePoleOfACalmNightIsFoundWithinItsError(String name, NightPlan plan) {
    SceneSky sky = Registration.of(shotsOf(plan));
    assertEquals(SceneSky.Finding.SKY_TURNS, sky.finding());
    assertTrue(sky.poleErrorDeg() < 0.3, "stated error " + sky.poleErrorDeg());
    assertFollows(sky, plan, 3);
    assertEquals(0, sky.frames().stream().filter(f -> f.jumpRad() > 0).count());
    assertEquals(0, sky.frames().stream().filter(f -> f.creep().rateRadPerS() > 0).count());
  }

  /** All frames registered, the pole within some standard errors, tracks that hold true stars. */
  private static void assertFollows(SceneSky sky, NightPlan plan, double sigmas) {
    for (int i = 0; i < truths(plan).size(); i++) {
      FrameTruth truth = truths(plan).get(i);
      FrameSky frame = sky.frames().get(i);
      assertTrue(frame.isRegistered(), "frame " + i + " is not registered");
      double off = frame.skySpin().orElseThrow().minus(spin(truth)).rateRadPerS() / OMEGA;
      assertTrue(
          Math.toDegrees(off) < sigmas * sky.poleErrorDeg(),
          "pole off by " + Math.toDegrees(off) + " deg, stated " + sky.poleErrorDeg());
    }
  }

  private static List<FrameTruth> truths(NightPlan plan) {
    return TRUTHS.computeIfAbsent(
        plan,
        p -> {
          NightSimulator simulator = new NightSimulator(p);
          return IntStream.rangeClosed(1, simulator.frameCount())
              .mapToObj(simulator::truth)
              .toList();
        });
  }

  private static List<SkyShot> shotsOf(NightPlan plan) {
    return truths(plan).stream()
        .map(t -> TruthFields.shot(plan, t, TruthFields.of(plan, t, plan.seed())))
        .toList();
  }

  private static Spin spin(FrameTruth truth) {
    return Spin.ofSky(Direction.of(truth.poleX(), truth.poleY(), truth.poleZ()));
  }

  @Test
  void aTrackIsOneStarOverTheFrames() {
    NightPlan plan = plan(EAST, 6, 40);
    SceneSky sky = Registration.of(shotsOf(plan));
    java.util.Map<Integer, Integer> numbers = new java.util.HashMap<>();
    int linked = 0;
    int wrong = 0;
    for (int i = 0; i < 6; i++) {
      FrameTruth truth = truths(plan).get(i);
      List<Star> stars = TruthFields.of(plan, truth, plan.seed()).stars();
      Set<Integer> seen = new HashSet<>();
      for (int j = 0; j < stars.size(); j++) {
        int track = sky.tracks().trackOf(i, j);
        if (track >= 0) {
          assertTrue(seen.add(track), "track twice in a frame");
          linked++;
          Integer before = numbers.putIfAbsent(track, nearest(truth, stars.get(j)));
          wrong += before != null && before != nearest(truth, stars.get(j)) ? 1 : 0;
        }
      }
    }
    assertTrue(linked > 500, "linked " + linked);
    assertTrue(wrong < 0.005 * linked, wrong + " wrong of " + linked);
  }

  private static int nearest(FrameTruth truth, Star star) {
    return truth.stars().stream()
        .min(
            java.util.Comparator.comparingDouble(
                t -> Math.hypot(t.xPx() - star.xPx(), t.yPx() - star.yPx())))
        .orElseThrow()
        .number();
  }

  @Test
  void aMountThatFollowsTheSkyIsToldWithItsDrift() {
    NightPlan plan =
        plan(
            new Night(50, 46.5, 120, 45),
            10,
            40,
            "tracking",
            "true",
            EVENTS,
            "[{\"kind\": \"droop\", \"firstFrame\": 1, \"lastFrame\": 10,"
                + " \"pxPerMinute\": 2, \"directionDeg\": 30}]");
    SceneSky sky = Registration.of(shotsOf(plan));
    assertEquals(SceneSky.Finding.TRACKING, sky.finding());
    for (FrameSky frame : sky.frames()) {
      assertEquals(0, frame.skySpin().orElseThrow().rateRadPerS());
      assertEquals(2, pxPerMinute(frame.creep(), plan), 0.05);
    }
  }

  @Test
  void aCameraAimedAtThePoleIsNotOnAMount() {
    NightPlan plan = plan(new Night(24, 60, 0, 60), 8, 40);
    assertEquals(SceneSky.Finding.SKY_TURNS, Registration.of(shotsOf(plan)).finding());
  }

  private static double pxPerMinute(Spin creep, NightPlan plan) {
    return creep.rateRadPerS() * 60 * plan.pixelsPerRadian();
  }

  @Test
  void aHeadThatDroopsForAPartOfTheNightIsToldFromTheSky() {
    NightPlan plan = plan(EAST, 18, 40, EVENTS, droop(11, 18));
    SceneSky sky = Registration.of(shotsOf(plan));
    assertFollows(sky, plan, 3);
    for (int i = 0; i < 18; i++) {
      double wanted = i < 9 ? 0 : i < 11 ? Double.NaN : 3;
      if (!Double.isNaN(wanted)) {
        assertEquals(wanted, pxPerMinute(sky.frames().get(i).creep(), plan), 0.1, "frame " + i);
      }
    }
  }

  /** The sky's axis wanders through the drooping camera: METHOD of rotation vectors on a circle. */
  @Tag("thorough")
  @Test
  void aHeadThatDroopsAllNightIsToldFromTheSkyWhenTheNightIsLong() {
    NightPlan plan = plan(EAST, 30, 80, EVENTS, droop(1, 30));
    SceneSky sky = Registration.of(shotsOf(plan));
    assertFollows(sky, plan, 3);
    assertTrue(sky.poleErrorDeg() < 1, "stated " + sky.poleErrorDeg());
    assertEquals(3, pxPerMinute(sky.frames().get(15).creep(), plan), 0.1);
  }

  @Test
  void overAShortSpanADroopOnlyWidensThePolesError() {
    NightPlan plan = plan(EAST, 8, 20, EVENTS, droop(1, 8));
    SceneSky sky = Registration.of(shotsOf(plan));
    assertFollows(sky, plan, 3);
    assertTrue(sky.poleErrorDeg() > 5, "stated " + sky.poleErrorDeg());
    FrameTruth truth = truths(plan).get(3);
    double perMinute = 3 / 60.0 / plan.pixelsPerRadian();
    Spin all = spin(truth).plus(new Spin(-perMinute, 0, 0));
    Spin seen = sky.frames().get(3).starSpin().orElseThrow();
    assertTrue(seen.minus(all).rateRadPerS() < 0.01 * OMEGA, "the stars' own motion is known");
  }

  private static String droop(int first, int last) {
    return "[{\"kind\": \"droop\", \"firstFrame\": %d, \"lastFrame\": %d,".formatted(first, last)
        + " \"pxPerMinute\": 3, \"directionDeg\": 90}]";
  }

  @Test
  void aKnockIsAJumpAndNoMotion() {
    NightPlan plan =
        plan(
            EAST,
            10,
            40,
            EVENTS,
            "[{\"kind\": \"knock\", \"frame\": 6, \"atShare\": 0.4, \"shiftXPx\": 8,"
                + " \"shiftYPx\": -5, \"ringPx\": 4, \"ringHz\": 6, \"ringDecaySeconds\": 0.8}]");
    SceneSky sky = Registration.of(shotsOf(plan));
    assertFollows(sky, plan, 3);
    double jumpPx =
        (sky.frames().get(5).jumpRad() + sky.frames().get(6).jumpRad()) * plan.pixelsPerRadian();
    assertEquals(Math.hypot(8, 5), jumpPx, 0.2);
    assertEquals(0, sky.frames().stream().filter(f -> f.creep().rateRadPerS() > 0).count());
  }

  /** A knock during frame 6 draws each of its stars twice, a share of the light before the step. */
  @ParameterizedTest
  @ValueSource(doubles = {0.38, 0.5, 0.62})
  void aFrameOfDoubleImagesHidesNoJump(double lightBefore) {
    NightPlan plan = plan(EAST, 10, 40, "lens.distortionK1", "0");
    double f = plan.pixelsPerRadian();
    Rotation knock = Rotation.ofVector(5 / f, 8 / f, 0);
    List<SkyShot> shots = new ArrayList<>();
    for (SkyShot shot : shotsOf(plan)) {
      int frame = shots.size();
      List<Star> stars = new ArrayList<>();
      for (Star star : shot.field().stars()) {
        double before = frame < 5 ? 1 : frame == 5 ? lightBefore : 0;
        if (before > 0) {
          stars.add(dimmed(star, before, star.xPx(), star.yPx()));
        }
        if (before < 1) {
          knocked(star, knock, f)
              .ifPresent(p -> stars.add(dimmed(star, 1 - before, p.xPx(), p.yPx())));
        }
      }
      shots.add(told(shot, Fields.field(1200, 800, stars, List.of())));
    }
    SceneSky sky = Registration.of(shots);
    double[] jumpsPx = sky.frames().stream().mapToDouble(x -> x.jumpRad() * f).toArray();
    assertEquals(Math.hypot(8, 5), jumpsPx[5] + jumpsPx[6], 0.3, "frame 6 or 7");
    int stepped = lightBefore > 0.5 ? 6 : 5;
    if (lightBefore != 0.5) {
      assertEquals(0, jumpsPx[11 - stepped], 0.3, "by the brighter image");
    }
    assertEquals(0, IntStream.of(1, 2, 3, 4, 7, 8, 9).mapToDouble(i -> jumpsPx[i]).sum(), 0.3);
    int alone = shots.get(4).field().stars().size();
    assertTrue(shared(sky, shots, 4, 6) > alone / 2, "tracks run through the knock");
    assertTrue(shared(sky, shots, 4, 5) > alone / 2, "and through the double frame");
  }

  private static Optional<ImagePoint> knocked(Star star, Rotation knock, double f) {
    Camera camera = Camera.rectilinear(f, 1200, 800);
    return camera
        .project(knock.apply(camera.direction(star.xPx(), star.yPx())))
        .filter(p -> p.xPx() > 0 && p.yPx() > 0 && p.xPx() < 1199 && p.yPx() < 799);
  }

  private static int shared(SceneSky sky, List<SkyShot> shots, int one, int other) {
    Set<Integer> tracks = tracks(sky, shots, one);
    tracks.retainAll(tracks(sky, shots, other));
    return tracks.size();
  }

  private static Set<Integer> tracks(SceneSky sky, List<SkyShot> shots, int frame) {
    Set<Integer> tracks = new HashSet<>();
    for (int j = 0; j < shots.get(frame).field().stars().size(); j++) {
      tracks.add(sky.tracks().trackOf(frame, j));
    }
    tracks.remove(-1);
    return tracks;
  }

  private static Star dimmed(Star s, double share, double x, double y) {
    return new Star(
        x,
        y,
        share * s.fluxCounts(),
        share * s.snr(),
        s.moments(),
        s.xxErrorPx2(),
        s.xyErrorPx2(),
        s.yyErrorPx2(),
        s.fwhmMajorPx(),
        s.fwhmMinorPx(),
        0,
        0,
        s.wingRatio(),
        s.peakFraction());
  }

  @ParameterizedTest
  @ValueSource(ints = {132, 250})
  void aNewAimKeepsThePole(int azimuthDeg) {
    String aim =
        "[{\"kind\": \"reAim\", \"frame\": 7, \"aim\": {\"azimuthDeg\": %d, \"altitudeDeg\": 40}}]"
            .formatted(azimuthDeg);
    NightPlan plan = plan(EAST, 12, 40, EVENTS, aim);
    SceneSky sky = Registration.of(shotsOf(plan));
    assertFollows(sky, plan, 4);
    assertTrue(sky.frames().get(6).jumpRad() > Math.toRadians(8), "a great jump");
    assertEquals(1, sky.frames().stream().filter(f -> f.jumpRad() > 0).count());
  }

  @Test
  void withoutTimesTheSkyIsItsOwnClock() {
    NightPlan plan = plan(EAST, 8, 40);
    for (Optional<Double> time : List.of(Optional.<Double>empty(), Optional.of(100.0))) {
      SceneSky sky = Registration.of(changed(plan, s -> told(s, s.field(), time)));
      assertEquals(SceneSky.Finding.CLOCK_UNKNOWN, sky.finding());
      assertFollows(sky, plan, 3);
    }
  }

  @Test
  void withoutAnyFactsTheScaleFollowsFromTheBendingOfTheField() {
    NightPlan plan = plan(EAST, 8, 40, "files", "{\"withoutExif\": true}");
    SceneSky sky = Registration.of(shotsOf(plan));
    assertEquals(SceneSky.Finding.CLOCK_UNKNOWN, sky.finding());
    assertEquals(1, sky.camera().orElseThrow().focalLengthPx() / plan.pixelsPerRadian(), 0.02);
    assertFollows(sky, plan, 3);
  }

  @ParameterizedTest
  @ValueSource(ints = {8, 30})
  void fewStarsDo(int count) {
    NightPlan plan = plan(EAST, 8, 40);
    SceneSky sky = Registration.of(changed(plan, s -> told(s, brightest(s, count))));
    assertEquals(SceneSky.Finding.SKY_TURNS, sky.finding());
    assertFollows(sky, plan, 3);
  }

  @Test
  void falseDetectionsAndGroundLightsDoNotMislead() {
    NightPlan plan = plan(EAST, 8, 40);
    List<SkyShot> shots = changed(plan, s -> told(s, brightest(s, 60)));
    List<SkyShot> spoiled = new ArrayList<>();
    for (int i = 0; i < shots.size(); i++) {
      List<Star> stars = new ArrayList<>(shots.get(i).field().stars());
      List<Star> real = shots.get(i).field().stars();
      random(new Random(i), 100).forEach(s -> stars.add(asBright(s, real, stars.size())));
      random(new Random(99), 40).forEach(s -> stars.add(asBright(s, real, stars.size())));
      spoiled.add(told(shots.get(i), Fields.field(1200, 800, stars, List.of())));
    }
    SceneSky sky = Registration.of(spoiled);
    assertEquals(SceneSky.Finding.SKY_TURNS, sky.finding());
    assertFollows(sky, plan, 3);
  }

  @ParameterizedTest
  @ValueSource(ints = {5, 12, 60, 400})
  void framesThatShareNothingAreNotMatched(int count) {
    List<SkyShot> shots = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      StarField field = Fields.field(1200, 800, random(new Random(31L * i), count), List.of());
      shots.add(
          new SkyShot(
              field,
              Optional.of(30.0 * i),
              1,
              Optional.of(10.0),
              Optional.of(2000.0),
              rondure.base.Orientation.NORMAL));
    }
    SceneSky sky = Registration.of(shots);
    assertEquals(SceneSky.Finding.NO_MATCH, sky.finding());
    assertTrue(sky.frames().stream().noneMatch(FrameSky::isRegistered));
  }

  /** With and without distortion, so that the calibration's choice and fit turn as well. */
  @ParameterizedTest
  @ValueSource(strings = {"0", "-0.01"})
  void turningTheSensorTurnsThePole(String distortion) {
    NightPlan plan = plan(EAST, 6, 40, "lens.distortionK1", distortion);
    SceneSky sky = Registration.of(changed(plan, s -> told(s, mapped(s, 1, 1))));
    Spin plain = firstSpin(sky);
    Spin turned = firstSpin(Registration.of(changed(plan, s -> told(s, mapped(s, -1, -1)))));
    Spin mirrored = firstSpin(Registration.of(changed(plan, s -> told(s, mapped(s, -1, 1)))));
    double tolerance = 1e-9 * OMEGA; // sums in another order
    assertNear(new Spin(-plain.xRadPerS(), -plain.yRadPerS(), plain.zRadPerS()), turned, tolerance);
    // A mirror turns the components of a rotation that lie in it.
    assertNear(
        new Spin(plain.xRadPerS(), -plain.yRadPerS(), -plain.zRadPerS()), mirrored, tolerance);
    Spin quarter = firstSpin(Registration.of(changed(plan, s -> told(s, quarterTurned(s)))));
    assertNear(new Spin(-plain.yRadPerS(), plain.xRadPerS(), plain.zRadPerS()), quarter, tolerance);
  }

  /** Turned clockwise: what was right is below. */
  private static StarField quarterTurned(SkyShot shot) {
    StarField field = shot.field();
    List<Star> stars =
        field.stars().stream().map(s -> at(s, field.heightPx() - 1 - s.yPx(), s.xPx())).toList();
    return Fields.field(field.heightPx(), field.widthPx(), stars, List.of());
  }

  private static Spin firstSpin(SceneSky sky) {
    return sky.frames().get(0).skySpin().orElseThrow();
  }

  private static void assertNear(Spin wanted, Spin seen, double toleranceRadPerS) {
    double off = wanted.minus(seen).rateRadPerS();
    assertTrue(off < toleranceRadPerS, off + " over " + toleranceRadPerS);
  }

  private static StarField mapped(SkyShot shot, int signX, int signY) {
    StarField field = shot.field();
    List<Star> stars =
        field.stars().stream()
            .map(
                s ->
                    at(
                        s,
                        signX < 0 ? field.widthPx() - 1 - s.xPx() : s.xPx(),
                        signY < 0 ? field.heightPx() - 1 - s.yPx() : s.yPx()))
            .toList();
    return Fields.field(field.widthPx(), field.heightPx(), stars, List.of());
  }

  private static Star at(Star s, double x, double y) {
    return dimmed(s, 1, x, y);
  }

  private static List<SkyShot> changed(NightPlan plan, UnaryOperator<SkyShot> change) {
    return shotsOf(plan).stream().map(change).toList();
  }

  private static SkyShot told(SkyShot shot, StarField field) {
    return told(shot, field, shot.midSeconds());
  }

  private static SkyShot told(SkyShot shot, StarField field, Optional<Double> mid) {
    return new SkyShot(
        field,
        mid,
        shot.clockStepSeconds(),
        shot.exposureSeconds(),
        shot.focalLengthPx(),
        shot.orientation());
  }

  private static Star asBright(Star star, List<Star> real, int number) {
    Star like = real.get(number % real.size());
    return new Star(
        star.xPx(),
        star.yPx(),
        like.fluxCounts(),
        like.snr(),
        like.moments(),
        like.xxErrorPx2(),
        like.xyErrorPx2(),
        like.yyErrorPx2(),
        like.fwhmMajorPx(),
        like.fwhmMinorPx(),
        0,
        0,
        like.wingRatio(),
        like.peakFraction());
  }

  private static StarField brightest(SkyShot shot, int count) {
    List<Star> stars = shot.field().stars();
    return Fields.field(1200, 800, stars.subList(0, Math.min(count, stars.size())), List.of());
  }

  private static List<Star> random(Random chance, int count) {
    List<Star> stars = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      Star star =
          Fields.star(
              chance.nextDouble() * 1199, chance.nextDouble() * 799, Moments.round(1), 0.05);
      stars.add(star);
    }
    return stars;
  }
}
