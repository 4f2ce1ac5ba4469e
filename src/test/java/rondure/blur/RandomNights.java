package rondure.blur;

import java.util.Locale;
import java.util.SplittableRandom;
import rondure.sim.NightPlan;
import rondure.testing.SimNight;

/**
 * Plans of nights with one or two troubles each, drawn at random: 36 x 24 mm with pixels of 6 µm,
 * lenses of 14 to 135 mm and f/2.8, some 60 to 2000 stars, cores of 1.3 to 3.2 px, exposures true
 * or nominal, both hemispheres, any aim.
 */
final class RandomNights {
  private static final double[] FOCAL_MM = {14, 24, 35, 50, 85, 135};
  private static final double[] SECONDS = {5, 10, 13, 15, 20, 25, 30};
  private static final double[] SHORT_SECONDS = {1, 2, 5, 10};
  private static final double PITCH = 6;
  private static final double F_NUMBER = 2.8;

  /** What troubles a night. */
  enum Trouble {
    NONE,
    FOCUS,
    FOCUS_DRIFT,
    GUST,
    WIND_ALL_NIGHT,
    FOCUS_AND_GUST,
    KNOCK,
    HAND,
    TILT,
    CURVATURE,
    COMA
  }

  private final int frames;
  private final SplittableRandom chance;
  private final Trouble trouble;
  private final double focalMm;
  private final double corePx;

  /** r.m.s. width that the trouble adds, px. */
  private final double addedPx;

  private RandomNights(int number, int frames) {
    this.frames = frames;
    chance = new SplittableRandom(7919L * number + 3);
    trouble = Trouble.values()[number % Trouble.values().length];
    focalMm = FOCAL_MM[chance.nextInt(FOCAL_MM.length)];
    corePx = between(1.3, 3.2);
    addedPx = between(0.9, 2.7) * Math.sqrt(corePx * corePx / 5.545 + 1 / 12.0);
  }

  /** A night by its number; as many nights in a row as there are troubles show each once. */
  static NightPlan plan(int number, int frames) {
    return new RandomNights(number, frames).plan(number);
  }

  private double between(double least, double most) {
    return least + (most - least) * chance.nextDouble();
  }

  private NightPlan plan(int number) {
    double across = 2 * Math.toDegrees(Math.atan(18 / focalMm));
    double down = 2 * Math.toDegrees(Math.atan(12 / focalMm));
    double stars = Math.exp(between(Math.log(60), Math.log(2000)));
    double discMicrons = 4 * addedPx * F_NUMBER * PITCH;
    boolean tilted = trouble == Trouble.TILT;
    boolean curved = trouble == Trouble.CURVATURE;
    boolean comatic = trouble == Trouble.COMA;
    return SimNight.plan(
        "seed", "" + (4000 + number),
        "camera.widthPx", "6000",
        "camera.heightPx", "4000",
        "camera.pixelPitchMicrons", "" + PITCH,
        "camera.zeroPointElectronsPerSecondPerCm2", "1.0e6",
        "lens.focalLengthMm", "" + focalMm,
        "lens.fNumber", "" + F_NUMBER,
        "lens.coreFwhmPx", "" + corePx,
        "lens.distortionK1", "0",
        "lens.tiltRightMicrons", "" + (tilted ? 2.5 * discMicrons : between(-3, 3)),
        "lens.tiltDownMicrons", "" + between(-3, 3),
        "lens.curvatureMicrons", "" + (curved ? 3 * discMicrons : between(-20, 20)),
        "lens.astigmatismMicrons", "" + between(-15, 15),
        "lens.comaPx", "" + (comatic ? 4 * addedPx : between(0, 1.2)),
        "foreground.horizonDeg", "-90",
        "foreground.reliefDeg", "0",
        "foreground.treesDeg", "0",
        "foreground.lights", "[]",
        "aim.azimuthDeg", "" + between(0, 360),
        "aim.altitudeDeg", "" + between(20, 80),
        "aim.rollDeg", "" + between(-5, 5),
        "sky.latitudeDeg", chance.nextBoolean() ? "46" : "-35",
        "stars.starsPerSquareDegree", "" + 4 * stars / (across * down),
        "focusMicrons", focus(discMicrons),
        "events", "[" + event() + "]",
        "shots", shots());
  }

  private String shots() {
    double[] choice = focalMm > 60 ? SHORT_SECONDS : SECONDS;
    double seconds = choice[chance.nextInt(choice.length)];
    double open = chance.nextBoolean() ? seconds : ExposureTimes.steppedSeconds(seconds);
    return String.format(
        Locale.ROOT,
        "[{\"count\": %d, \"exposureSeconds\": %s, \"trueExposureSeconds\": %.4f,"
            + " \"intervalSeconds\": 60, \"iso\": 800}]",
        frames,
        seconds,
        open);
  }

  private String focus(double microns) {
    return switch (trouble) {
      case FOCUS -> "[{\"minutes\": 0, \"value\": " + microns + "}]";
      case FOCUS_AND_GUST -> "[{\"minutes\": 0, \"value\": " + between(0.5, 1.5) * microns + "}]";
      case FOCUS_DRIFT ->
          String.format(
              Locale.ROOT,
              "[{\"minutes\": 0, \"value\": %.1f}, {\"minutes\": %d, \"value\": %.1f}]",
              -0.3 * microns,
              frames,
              1.3 * microns);
      default -> "[]";
    };
  }

  private String event() {
    return switch (trouble) {
      case GUST, FOCUS_AND_GUST -> gust(frames / 3 + 1, 2 * frames / 3);
      case WIND_ALL_NIGHT -> gust(1, frames);
      case KNOCK -> knock();
      case HAND ->
          String.format(
              Locale.ROOT,
              "{\"kind\": \"handPress\", \"firstFrame\": 1, \"lastFrame\": %d, \"amplitudePx\": %.2f,"
                  + " \"frequencyHz\": 4, \"decaySeconds\": 4}",
              1 + frames / 3,
              4 * addedPx);
      default -> "";
    };
  }

  private String gust(int first, int last) {
    return String.format(
        Locale.ROOT,
        "{\"kind\": \"gust\", \"firstFrame\": %d, \"lastFrame\": %d, \"amplitudePx\": %.2f,"
            + " \"acrossShare\": %.2f, \"frequencyHz\": 5, \"directionDeg\": %.1f}",
        first,
        last,
        2 * addedPx,
        between(0, 0.8),
        between(0, 180));
  }

  private String knock() {
    double direction = between(0, 2 * Math.PI);
    return String.format(
        Locale.ROOT,
        "{\"kind\": \"knock\", \"frame\": %d, \"atShare\": %.2f, \"shiftXPx\": %.1f,"
            + " \"shiftYPx\": %.1f, \"ringPx\": 4, \"ringHz\": 6, \"ringDecaySeconds\": 0.8}",
        frames / 2,
        between(0.3, 0.7),
        4 * addedPx * Math.cos(direction),
        4 * addedPx * Math.sin(direction));
  }
}
