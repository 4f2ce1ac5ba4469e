package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Whether the pole's stated error is its real one: nights drawn at random (14 to 135 mm, poles 20
 * to 120° off the axis, 6 to 30 frames of 60 to 400 stars, focal lengths 2 % wrong in the files),
 * the tripod at rest or moving in one of several ways. Errors of a plane are within one standard
 * error, both ways together, in 63 of 100 nights when both ways are alike, in 68 when one rules.
 */
class PoleCoverageTest {
  private static final int NIGHTS = 60;
  private static final double[] FOCAL_MM = {14, 20, 24, 35, 50, 85, 135};

  /** What the tripod does. */
  enum Kind {
    CALM,
    WHOLE_SECONDS,
    FEW_STARS,
    FOUR_FRAMES,
    /** Wind that moves every frame anew, 0.1 to 0.5 px. */
    WINDY,
    /** Slow swings in a third of the night. */
    GUSTS,
    /** Slow swings all night. */
    GUSTS_ALL_NIGHT,
    /** A random walk of the head. */
    WANDER,
    /** A droop that begins in the night. */
    CREEP,
    /** A head that settles. */
    RELAX,
    KNOCK
  }

  private record Coverage(double pullRms, double within1, double within2, int nights) {

    String row(Kind kind) {
      return String.format(
          java.util.Locale.ROOT,
          "| %s | %.2f | %.0f %% | %.0f %% | %d |",
          kind,
          pullRms,
          100 * within1,
          100 * within2,
          nights);
    }
  }

  private static TripodNight night(Kind kind, long seed) {
    Random chance = new Random(seed * 31 + kind.ordinal());
    TripodNight night = new TripodNight(seed);
    TurningSky sky = night.sky;
    double focalMm = FOCAL_MM[chance.nextInt(FOCAL_MM.length)];
    sky.focalPx = focalMm * 1000 / 6;
    sky.k1 = focalMm < 30 ? -0.03 + 0.05 * chance.nextDouble() : 0.02 * chance.nextDouble() - 0.01;
    sky.poleOffAxisDeg = 20 + 100 * chance.nextDouble();
    sky.polePositionDeg = 360 * chance.nextDouble();
    sky.frames = kind == Kind.FOUR_FRAMES ? 4 : 6 + chance.nextInt(25);
    sky.intervalSeconds = 15 + 45 * chance.nextDouble();
    sky.starsInFrame = 60 + chance.nextInt(340);
    sky.clockStepSeconds = kind == Kind.WHOLE_SECONDS ? 1 : 0.01;
    if (kind == Kind.FEW_STARS) {
      sky.starsInFrame = 12 + chance.nextInt(20);
    }
    night.told = 1 + 0.02 * chance.nextGaussian();
    night.motion = motion(kind, sky, chance);
    return night;
  }

  private static TripodNight.Motion motion(Kind kind, TurningSky sky, Random chance) {
    double span = (sky.frames - 1) * sky.intervalSeconds;
    double px = 1 / sky.focalPx;
    double direction = 2 * Math.PI * chance.nextDouble();
    double size = chance.nextDouble();
    double start = span * (0.5 * chance.nextDouble() - 0.3);
    double hz = 0.02 + 0.3 * chance.nextDouble();
    double phase = 6 * chance.nextDouble();
    double open = Math.PI * hz * TripodNight.EXPOSURE_SECONDS;
    double swing = (0.4 + 1.6 * size) * px * Math.sin(open) / open;
    return switch (kind) {
      case CALM, WHOLE_SECONDS, FEW_STARS, FOUR_FRAMES -> seconds -> new double[3];
      case GUSTS ->
          t ->
              turn(
                  t < start || t > start + span / 3
                      ? 0
                      : swing * Math.sin(2 * Math.PI * hz * t + phase),
                  direction);
      case GUSTS_ALL_NIGHT -> t -> turn(swing * Math.sin(2 * Math.PI * hz * t + phase), direction);
      case CREEP -> t -> turn((0.5 + 4 * size) / 60 * px * Math.max(0, t - start), direction);
      case RELAX ->
          t ->
              turn(
                  (1 + 5 * size) * px * Math.exp(-(t + span / 2) / (span * (0.1 + hz))), direction);
      case KNOCK -> t -> turn(t < start ? 0 : (1 + 8 * size) * px, direction);
      case WANDER -> places(sky, (0.05 + 0.25 * size) * px, chance, true);
      case WINDY -> places(sky, (0.1 + 0.4 * size) * px, chance, false);
    };
  }

  private static double[] turn(double rad, double direction) {
    return new double[] {-Math.sin(direction) * rad, Math.cos(direction) * rad, 0};
  }

  /** A place for each frame, from the one before or anew; about the axis a third as much. */
  private static TripodNight.Motion places(
      TurningSky sky, double stepRad, Random chance, boolean walks) {
    double[][] places = new double[sky.frames][3];
    for (int i = 1; i < places.length; i++) {
      for (int k = 0; k < 3; k++) {
        double step = (k < 2 ? 1 : 0.3) * stepRad * chance.nextGaussian();
        places[i][k] = walks ? places[i - 1][k] + step : step;
      }
    }
    double middle = (sky.frames - 1) / 2.0;
    return t -> places[(int) Math.round(t / sky.intervalSeconds + middle)].clone();
  }

  private static Coverage coverage(Kind kind, int nights) {
    double squares = 0;
    int within1 = 0;
    int within2 = 0;
    int solved = 0;
    for (int trial = 0; trial < nights; trial++) {
      TripodNight night = night(kind, 5000 + trial);
      SceneSky sky = Registration.of(night.shots());
      if (sky.finding() == SceneSky.Finding.SKY_TURNS) {
        double pull = offDeg(sky, night) / sky.poleErrorDeg();
        squares += pull * pull;
        within1 += pull < 1 ? 1 : 0;
        within2 += pull < 2 ? 1 : 0;
        solved++;
      }
    }
    double count = solved;
    return new Coverage(Math.sqrt(squares / count), within1 / count, within2 / count, solved);
  }

  /** R.m.s. over the frames. */
  private static double offDeg(SceneSky sky, TripodNight night) {
    double squares = 0;
    int frames = night.sky.frames;
    for (int i = 0; i < frames; i++) {
      Spin seen = sky.frames().get(i).skySpin().orElseThrow();
      double off = seen.minus(night.trueSpin(i)).rateRadPerS();
      squares += Math.pow(off / SkyMotion.SIDEREAL_RATE_RAD_PER_S, 2) / frames;
    }
    return Math.toDegrees(Math.sqrt(squares));
  }

  /** Few nights: only gross errors show. */
  @ParameterizedTest
  @EnumSource(
      value = Kind.class,
      names = {"CALM", "WINDY", "WANDER"})
  void theStatedErrorIsOfTheRightSize(Kind kind) {
    Coverage seen = coverage(kind, 12);
    assertEquals(12, seen.nights(), 1);
    assertTrue(seen.pullRms() > 0.4 && seen.pullRms() < 2.5, seen.toString());
  }

  @Tag("thorough")
  @ParameterizedTest
  @EnumSource(Kind.class)
  void theStatedErrorIsTheRealOne(Kind kind) {
    Coverage seen = coverage(kind, NIGHTS);
    System.out.println(seen.row(kind));
    assertTrue(seen.nights() >= 0.9 * NIGHTS, seen.toString());
    // Wanted: 0.63 to 0.68 and 0.95 to 0.98. More is stated than needed where a walk cannot be
    // excluded, less where it is one: the limits are those of the table in docs/accuracy.md, less
    // the chance of 60 nights (0.06 and 0.04).
    assertTrue(seen.within1() > 0.49, seen.toString());
    assertTrue(seen.within2() > 0.86, seen.toString());
    assertTrue(seen.pullRms() > 0.5 && seen.pullRms() < 1.45, seen.toString());
  }
}
