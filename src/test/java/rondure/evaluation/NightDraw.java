package rondure.evaluation;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import rondure.base.Orientation;
import rondure.sim.AimPlan;
import rondure.sim.FilePlan;
import rondure.sim.ForegroundPlan;
import rondure.sim.GroundLight;
import rondure.sim.LensPlan;
import rondure.sim.NightPlan;
import rondure.sim.OutputFormat;
import rondure.sim.ShotGroup;
import rondure.sim.SkyPlan;
import rondure.sim.TimePoint;

/** Draws the plan of a night of six frames from a seed: gear, place, aim, land, files. */
final class NightDraw {
  static final int FRAMES = 6;
  private static final double SIDEREAL_RAD_PER_S = 7.2921159e-5;
  private static final double ARCSEC_PER_RADIAN = 180 * 3600 / Math.PI;
  private static final double READ_NOISE_E2 = 16;

  private final long seed;
  private final Trouble trouble;
  private final Dice dice;
  private final Gear gear;
  private final double latitudeDeg;

  NightDraw(long seed, Trouble trouble) {
    this.seed = seed;
    this.trouble = trouble;
    this.dice = new Dice(seed);
    this.gear = Gear.draw(dice);
    this.latitudeDeg = dice.sign() * dice.between(20, 60);
  }

  /** A night and how its files are written. */
  record Drawn(NightPlan plan, OutputFormat format) {}

  Drawn drawn() {
    AimPlan aim = aim();
    Misfortune misfortune = Misfortune.draw(trouble, gear, dice, cosDeclination(aim));
    boolean jpeg = dice.chance(0.2);
    double shortest = Collections.min(misfortune.seconds());
    double skyElectrons = dice.scaled(150, 3000);
    String start = dice.chance(0.5) ? "2025-03-02T22:41:07.370" : "2025-08-21T01:12:40.150";
    LensPlan lens =
        gear.lens(misfortune.aberrations(), dice.between(0.3, 1.5), dice.between(-0.02, 0.005));
    SkyPlan sky = sky(skyElectrons, shortest);
    double measurable = dice.scaled(StarDraw.FEWEST, StarDraw.MOST);
    NightPlan plan =
        new NightPlan(
            trouble.name().toLowerCase(java.util.Locale.ROOT) + " " + seed,
            seed,
            start,
            60,
            gear.camera(),
            lens,
            aim,
            misfortune.tracking(),
            sky,
            StarDraw.guess(gear, limit(skyElectrons, shortest), measurable),
            land(aim),
            focus(misfortune),
            List.of(),
            shots(misfortune.seconds()),
            misfortune.events(),
            files(jpeg));
    return new Drawn(
        StarDraw.adjusted(plan, measurable), jpeg ? OutputFormat.JPEG : OutputFormat.TIFF);
  }

  private AimPlan aim() {
    double kind = dice.between(0, 1);
    boolean trails = Misfortune.needsMovingSky(trouble);
    double poleward = latitudeDeg > 0 ? 0 : 180;
    Orientation held =
        dice.chance(0.25)
            ? dice.chance(0.5) ? Orientation.ROTATED_90_CW : Orientation.ROTATED_270_CW
            : Orientation.NORMAL;
    double roll = dice.between(-3, 3);
    double altitude = dice.between(15, 65);
    double azimuth = dice.between(-180, 180);
    if (kind < 0.2 && !trails) {
      azimuth = poleward + dice.between(-8, 8);
      altitude = Math.abs(latitudeDeg) + dice.between(-6, 6);
    } else if (kind < 0.45) {
      azimuth = poleward + 180 + dice.between(-30, 30);
      altitude = 90 - Math.abs(latitudeDeg) + dice.between(-5, 5);
    } else if (trails) {
      azimuth = poleward + 180 + dice.between(-110, 110);
    }
    return new AimPlan(
        ((azimuth + 540) % 360) - 180, Math.min(75, Math.max(12, altitude)), roll, held);
  }

  private double cosDeclination(AimPlan aim) {
    double altitude = Math.toRadians(aim.altitudeDeg());
    double latitude = Math.toRadians(latitudeDeg);
    double sine =
        Math.sin(altitude) * Math.sin(latitude)
            + Math.cos(altitude) * Math.cos(latitude) * Math.cos(Math.toRadians(aim.azimuthDeg()));
    return Math.sqrt(1 - sine * sine);
  }

  private double zeroElectrons(double seconds) {
    double apertureCm = gear.focalLengthMm() / gear.fNumber() / 10;
    return Gear.ZERO_POINT * Math.PI / 4 * apertureCm * apertureCm * seconds;
  }

  private SkyPlan sky(double skyElectrons, double seconds) {
    double pixel = ARCSEC_PER_RADIAN / gear.focalLengthPx();
    double magnitude = 2.5 * Math.log10(zeroElectrons(seconds) * pixel * pixel / skyElectrons);
    return new SkyPlan(
        latitudeDeg,
        Math.max(5, magnitude),
        dice.between(0, 0.6),
        dice.between(-180, 180),
        dice.between(0, 1),
        dice.between(0, 0.6),
        85,
        20,
        dice.between(0.1, 0.25));
  }

  /** Magnitude of a star that is just bright enough for its shape, without glass and air. */
  private double limit(double skyElectrons, double seconds) {
    double noise = Math.sqrt(skyElectrons + READ_NOISE_E2);
    double electrons =
        StarDraw.MEASURABLE_SNR * Math.sqrt(4 * Math.PI) * noise * Math.sqrt(gear.corePx2());
    return 2.5 * Math.log10(zeroElectrons(seconds) / electrons);
  }

  private ForegroundPlan land(AimPlan aim) {
    double kind = dice.between(0, 1);
    if (kind < 0.4) {
      return ForegroundPlan.NONE;
    }
    boolean upright = aim.held() == Orientation.NORMAL;
    double half = upright ? gear.halfHeightDeg() : gear.halfWidthDeg();
    double share = kind > 0.85 ? dice.between(0.02, 0.25) : dice.between(-0.9, -0.4);
    double horizon = Math.min(58, Math.max(-40, aim.altitudeDeg() + share * half));
    List<GroundLight> lights = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      double azimuth = aim.azimuthDeg() + dice.between(-0.6, 0.6) * gear.halfWidthDeg();
      double down = dice.between(0.05, 0.35) * half;
      double clear = Math.log10(zeroElectrons(1) / 2000) * 2.5;
      lights.add(
          new GroundLight(
              Math.max(-360, Math.min(360, azimuth)),
              Math.max(-89, horizon - down),
              clear - dice.between(-1, 2)));
    }
    return new ForegroundPlan(
        horizon, 0.05 * half, 0.03 * half, dice.between(0.05, 0.3), 0.5, lights);
  }

  private List<TimePoint> focus(Misfortune misfortune) {
    if (misfortune.focusFromPx() == misfortune.focusToPx()) {
      return List.of(new TimePoint(0, gear.micronsOfDisc(misfortune.focusFromPx())));
    }
    double end = FRAMES * 1.1 * misfortune.seconds().get(0) / 60;
    return List.of(
        new TimePoint(0, gear.micronsOfDisc(misfortune.focusFromPx())),
        new TimePoint(0.35 * end, gear.micronsOfDisc(misfortune.focusFromPx())),
        new TimePoint(end, gear.micronsOfDisc(misfortune.focusToPx())));
  }

  /** Frames of one exposure follow each other at once, or after as long (dark subtraction). */
  private List<ShotGroup> shots(List<Double> seconds) {
    double pause = dice.pick(1, 1, 3, 12);
    double doubled = dice.chance(0.15) ? 2 : 1;
    boolean nominal = dice.chance(0.5);
    List<ShotGroup> groups = new ArrayList<>();
    for (double named : seconds) {
      double open = nominal ? TrueSeconds.of(named) : named;
      groups.add(
          new ShotGroup(
              1,
              0,
              named,
              OptionalDouble.of(open),
              Math.max(open, named) * doubled + pause,
              Gear.ISO,
              OptionalDouble.empty(),
              0,
              0));
    }
    return groups;
  }

  private FilePlan files(boolean jpeg) {
    boolean sharpened = jpeg && dice.chance(0.3);
    return new FilePlan(
        false,
        dice.chance(0.35),
        dice.chance(0.5),
        false,
        (int) dice.pick(85, 92, 97),
        jpeg ? dice.between(0.5, 2) : 0,
        sharpened ? 0.5 : 0);
  }

  /** Seconds in which a star of the equator moves by this many px at the centre. */
  static double secondsOfTrail(Gear gear, double trailPx) {
    return trailPx / (gear.focalLengthPx() * SIDEREAL_RAD_PER_S);
  }
}
