package rondure.evaluation;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import rondure.sim.NightPlan;
import rondure.testing.SimNight;

/**
 * A night of 15 to 100 frames with a focus test at its start, in its middle or at its end: lenses
 * of 14 to 135 mm with tilted and curved fields, 60 to 600 stars.
 *
 * @param plan of the simulator
 * @param first index of the test's first frame
 * @param last of its last, without a way back
 * @param steps focus error of each frame from {@code first} to {@code last}, from best focus, px of
 *     disc
 * @param nightDiscPx the same of the frames before and after
 */
record SeriesNight(NightPlan plan, int first, int last, List<Double> steps, double nightDiscPx) {
  SeriesNight {
    steps = List.copyOf(steps);
  }

  /** How the focus was stepped. */
  enum Kind {
    /** By a motor. */
    EQUAL,
    /** By hand: each position off by up to a quarter step, r.m.s. */
    BY_HAND,
    /** Two to four frames at each position. */
    REPEATED,
    /** One to three, unlike from position to position. */
    UNLIKE_REPEATS,
    /** Coarse, fine, coarse. */
    UNEQUAL,
    /** There, and back in two to four steps. */
    RETURNING
  }

  static SeriesNight draw(long seed, Kind kind) {
    return new Draw(seed, kind).night();
  }

  private static final class Draw {
    private static final double[] FOCAL_MM = {14, 24, 35, 50, 85, 135};
    private static final double PITCH_MICRONS = 6;
    private static final double F_NUMBER = 2.8;
    private static final double LONGEST_TRAIL_PX = 5;
    private static final double STARS_SEEN = 1.8;
    private static final double SIDEREAL = 7.2921159e-5;

    private final SplittableRandom chance;
    private final long seed;
    private final Kind kind;
    private final double focalMm;
    private final double seconds;
    private final double coreFwhmPx;
    private final double curvatureMicrons;

    Draw(long seed, Kind kind) {
      this.seed = seed;
      this.kind = kind;
      chance = new SplittableRandom(seed * 7919 + kind.ordinal());
      focalMm = FOCAL_MM[chance.nextInt(FOCAL_MM.length)];
      double longest = LONGEST_TRAIL_PX / (SIDEREAL * focalMm * 1000 / PITCH_MICRONS);
      seconds = Math.min(20, Math.max(1, longest)) * between(0.4, 1);
      coreFwhmPx = between(1.8, 3);
      curvatureMicrons = between(-20, 20);
    }

    private double between(double least, double most) {
      return least + (most - least) * chance.nextDouble();
    }

    private double gaussian() {
      return chance.nextGaussian();
    }

    /** From best focus, in steps. */
    private List<Double> steps() {
      int positions = 6 + chance.nextInt(6);
      double before = between(0.25, 0.75) * (positions - 1);
      double uneven = kind == Kind.BY_HAND ? between(0, 0.25) : 0;
      int repeats = kind == Kind.REPEATED ? 2 + chance.nextInt(3) : 1;
      List<Double> steps = new ArrayList<>();
      for (int i = 0; i < positions; i++) {
        double at = i - before + uneven * gaussian();
        int frames = kind == Kind.UNLIKE_REPEATS ? 1 + chance.nextInt(3) : repeats;
        double reach = Math.max(before, positions - 1 - before);
        double shaped = Math.signum(at) * Math.pow(Math.abs(at) / reach, 2) * reach;
        steps.addAll(Collections.nCopies(frames, kind == Kind.UNEQUAL ? shaped : at));
      }
      if (chance.nextBoolean()) {
        Collections.reverse(steps);
      }
      return steps;
    }

    SeriesNight night() {
      List<Double> steps = steps();
      double core = Math.pow(coreFwhmPx / 2.3548, 2);
      double reach = steps.stream().mapToDouble(Math::abs).max().orElseThrow();
      double discPerStep = 4 * Math.sqrt(core * (Math.pow(between(1.5, 3.5), 2) - 1)) / reach;
      List<Double> discs = steps.stream().map(step -> step * discPerStep).toList();
      double night = chance.nextInt(3) == 0 ? 0 : between(-2.5, 2.5) * Math.sqrt(core);
      int before = chance.nextInt(3) == 0 ? 0 : 5 + chance.nextInt(20);
      int after = before > 0 && chance.nextInt(3) == 0 ? 0 : 6 + chance.nextInt(20);
      List<Double> all = new ArrayList<>(Collections.nCopies(before, night));
      all.addAll(discs);
      if (kind == Kind.RETURNING) {
        int back = 2 + chance.nextInt(3);
        double end = discs.get(discs.size() - 1);
        for (int i = 1; i < back; i++) {
          all.add(end + (night - end) * i / back);
        }
      }
      all.addAll(Collections.nCopies(after, night));
      return new SeriesNight(plan(all), before, before + steps.size() - 1, discs, night);
    }

    private NightPlan plan(List<Double> discs) {
      double across = 2 * Math.toDegrees(Math.atan(18 / focalMm));
      double down = 2 * Math.toDegrees(Math.atan(12 / focalMm));
      double stars = Math.exp(between(Math.log(60), Math.log(600)));
      return SimNight.plan(
          "title", "\"" + kind + " " + seed + "\"",
          "seed", "" + seed,
          "camera.widthPx", "6000",
          "camera.heightPx", "4000",
          "camera.pixelPitchMicrons", "" + PITCH_MICRONS,
          "camera.zeroPointElectronsPerSecondPerCm2", "1.0e6",
          "lens.focalLengthMm", "" + focalMm,
          "lens.fNumber", "" + F_NUMBER,
          "lens.coreFwhmPx", "" + coreFwhmPx,
          "lens.distortionK1", "0",
          "lens.tiltRightMicrons", "" + between(-8, 8),
          "lens.tiltDownMicrons", "" + between(-8, 8),
          "lens.curvatureMicrons", "" + curvatureMicrons,
          "lens.astigmatismMicrons", "" + between(-15, 15),
          "lens.comaPx", "" + between(0, 1),
          "foreground.horizonDeg", "-90",
          "foreground.reliefDeg", "0",
          "foreground.treesDeg", "0",
          "foreground.lights", "[]",
          "aim.azimuthDeg", "" + between(0, 360),
          "aim.altitudeDeg", "" + between(25, 80),
          "sky.latitudeDeg", "46",
          "stars.starsPerSquareDegree", "" + STARS_SEEN * stars / (across * down),
          "focusMicrons", "[]",
          "temperatureC", "[]",
          "shots", "[" + String.join(",", discs.stream().map(this::shot).toList()) + "]");
    }

    /** The field's mean signed focus error is the plan's and a third of the corner's curvature. */
    private String shot(double discPx) {
      return String.format(
          Locale.ROOT,
          "{\"count\": 1, \"exposureSeconds\": %.3f, \"intervalSeconds\": %.3f, \"iso\": 1600,"
              + " \"focusMicrons\": %.4f}",
          seconds,
          seconds + 15,
          discPx * F_NUMBER * PITCH_MICRONS - curvatureMicrons / 3);
    }
  }
}
