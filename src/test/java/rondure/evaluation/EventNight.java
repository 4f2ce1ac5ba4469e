package rondure.evaluation;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import rondure.base.Orientation;
import rondure.night.EventKind;
import rondure.sim.AimPlan;
import rondure.sim.CauseShares;
import rondure.sim.NightEvent;
import rondure.sim.NightPlan;
import rondure.sim.NightSimulator;
import rondure.sim.TimePoint;
import rondure.testing.SimNight;

/**
 * A night of 40 to 300 frames in which something happens at a known time: lenses of 14 to 135 mm,
 * 60 to 600 stars, events from the smallest that must be found upward; or nothing that matters.
 *
 * @param plan of the simulator
 * @param scheduled what happens
 */
record EventNight(NightPlan plan, List<Scheduled> scheduled) {
  EventNight {
    scheduled = List.copyOf(scheduled);
  }

  /** What a night is about. */
  enum Theme {
    KNOCK,
    GUSTS,
    DROOP,
    FOCUS_CREEP,
    CLOUD,
    DEW,
    BRIGHTER,
    HAND,
    RE_AIM,
    FOCUS_KNOCKED,
    EXPOSURE,
    DRIFT,
    MIXED,
    CALM,
    BREEZE,
    SLOW_CHANGES
  }

  /**
   * One event.
   *
   * @param kind what
   * @param first frame, from 0
   * @param last frame
   * @param size in the unit of the kind's first size
   */
  record Scheduled(EventKind kind, int first, int last, double size) {}

  static EventNight draw(long seed, Theme theme, int mostFrames) {
    return new Draw(seed, theme, mostFrames).night();
  }

  /** One night being drawn. */
  private static final class Draw {
    private static final double[] FOCAL_MM = {14, 24, 35, 50, 85, 135};
    private static final double PITCH_MICRONS = 6;
    private static final double F_NUMBER = 2.8;
    private static final double LONGEST_TRAIL_PX = 5;
    private static final double STARS_SEEN = 1.8;
    private static final double SIDEREAL = 7.2921159e-5;

    private final SplittableRandom chance;
    private final long seed;
    private final Theme theme;
    private final int frames;
    private final double focalMm;
    private final double seconds;
    private final double interval;
    private final double latitude;
    private final AimPlan aim;
    private final List<NightEvent> events = new ArrayList<>();
    private final List<Scheduled> scheduled = new ArrayList<>();
    private List<TimePoint> focus = List.of();

    Draw(long seed, Theme theme, int mostFrames) {
      this.seed = seed;
      this.theme = theme;
      chance = new SplittableRandom(seed * 7919 + theme.ordinal());
      frames = (int) Math.exp(between(Math.log(40), Math.log(mostFrames + 0.5)));
      focalMm = FOCAL_MM[chance.nextInt(FOCAL_MM.length)];
      double longest = LONGEST_TRAIL_PX / (SIDEREAL * focalMm * 1000 / PITCH_MICRONS);
      double[] open = {25, 20, 15, 10, 8, 5, 4, 2};
      int least = 0;
      while (least < open.length - 1 && open[least] > longest) {
        least++;
      }
      seconds = open[Math.min(open.length - 1, least + chance.nextInt(2))];
      boolean slow = theme == Theme.FOCUS_CREEP || theme == Theme.SLOW_CHANGES;
      double hour = slow ? 3600.0 / frames : 0;
      interval = Math.max(hour, seconds + between(1, 35));
      latitude = chance.nextBoolean() ? 46 : -35;
      aim = new AimPlan(between(0, 360), between(25, 80), between(-5, 5), Orientation.NORMAL);
    }

    EventNight night() {
      NightPlan calm = calm();
      switch (theme) {
        case KNOCK -> knocks();
        case GUSTS -> gusts(calm);
        case DROOP, DRIFT -> droop();
        case FOCUS_CREEP -> creep(calm);
        case CLOUD -> clouds();
        case DEW -> dew();
        case BRIGHTER -> brighter();
        case HAND -> hand(calm);
        case RE_AIM -> reAim();
        case FOCUS_KNOCKED -> focusKnocked(calm);
        case EXPOSURE -> exposure(calm);
        case MIXED -> mixed(calm);
        case BREEZE -> breeze(calm);
        case SLOW_CHANGES -> slowChanges(calm);
        default -> {}
      }
      NightPlan plan = Plans.with(calm, focus, events);
      return new EventNight(plan, scheduled.stream().map(one -> shaken(plan, one)).toList());
    }

    /** With the widening that the simulator truly made. */
    private static Scheduled shaken(NightPlan plan, Scheduled one) {
      if (one.kind() != EventKind.GUSTS && one.kind() != EventKind.HAND_ON_SHUTTER) {
        return one;
      }
      NightSimulator simulator = new NightSimulator(plan);
      double most = 1;
      for (int frame = one.first(); frame <= one.last(); frame++) {
        CauseShares px2 = simulator.truth(frame + 1).sharesPx2();
        double rest = px2.core() + px2.focus() + px2.trailing() + px2.lens();
        most = Math.max(most, Math.sqrt((rest + px2.tripod()) / rest));
      }
      return new Scheduled(one.kind(), one.first(), one.last(), most);
    }

    private double between(double least, double most) {
      return least + (most - least) * chance.nextDouble();
    }

    /** Sizes crowd at the least one. */
    private double from(double least, double times) {
      return least * Math.pow(times, Math.pow(chance.nextDouble(), 1.5));
    }

    private void add(EventKind kind, int first, int last, double size) {
      scheduled.add(new Scheduled(kind, first, last, size));
    }

    private NightPlan calm() {
      double across = 2 * Math.toDegrees(Math.atan(18 / focalMm));
      double down = 2 * Math.toDegrees(Math.atan(12 / focalMm));
      double stars = Math.exp(between(Math.log(60), Math.log(600)));
      return SimNight.plan(
          "title", "\"" + theme + " " + seed + "\"",
          "seed", "" + seed,
          "camera.widthPx", "6000",
          "camera.heightPx", "4000",
          "camera.pixelPitchMicrons", "" + PITCH_MICRONS,
          "camera.zeroPointElectronsPerSecondPerCm2", "1.0e6",
          "lens.focalLengthMm", "" + focalMm,
          "lens.fNumber", "" + F_NUMBER,
          "lens.coreFwhmPx", "" + between(1.8, 3),
          "lens.distortionK1", "0",
          "lens.tiltRightMicrons", "" + between(-3, 3),
          "lens.tiltDownMicrons", "" + between(-3, 3),
          "lens.curvatureMicrons", "" + between(-20, 20),
          "lens.astigmatismMicrons", "" + between(-15, 15),
          "lens.comaPx", "" + between(0, 1),
          "foreground.horizonDeg", "-90",
          "foreground.reliefDeg", "0",
          "foreground.treesDeg", "0",
          "foreground.lights", "[]",
          "tracking", "" + (theme == Theme.DRIFT),
          "aim.azimuthDeg", "" + aim.azimuthDeg(),
          "aim.altitudeDeg", "" + aim.altitudeDeg(),
          "aim.rollDeg", "" + aim.rollDeg(),
          "sky.latitudeDeg", "" + latitude,
          "stars.starsPerSquareDegree", "" + STARS_SEEN * stars / (across * down),
          "focusMicrons", "[]",
          "temperatureC", "[]",
          "shots", "[" + shots() + "]");
    }

    private String shots() {
      if (theme == Theme.HAND) {
        int burst = Math.max(6, frames / 6);
        int bursts = frames / burst;
        List<String> groups = new ArrayList<>();
        for (int b = 0; b < bursts; b++) {
          groups.add(shots(burst, b == 0 ? 0 : between(4, 10) * interval, seconds));
        }
        return String.join(",", groups);
      }
      if (theme == Theme.EXPOSURE) {
        int first = (int) (frames * between(0.3, 0.7));
        return shots(first, 0, seconds) + "," + shots(frames - first, 0, seconds / 2);
      }
      return shots(frames, 0, seconds);
    }

    private String shots(int count, double pause, double exposure) {
      return String.format(
          Locale.ROOT,
          "{\"count\": %d, \"pauseBeforeSeconds\": %.1f, \"exposureSeconds\": %s,"
              + " \"intervalSeconds\": %.3f, \"iso\": 1600}",
          count,
          pause,
          exposure,
          interval);
    }

    /** One to three, at least 6 frames apart. */
    private List<Integer> places(int most, int room) {
      int count = 1 + chance.nextInt(most);
      List<Integer> places = new ArrayList<>();
      int share = (frames - 4) / count;
      for (int k = 0; k < count; k++) {
        places.add(2 + k * share + chance.nextInt(Math.max(1, share - room - 4)));
      }
      return places;
    }

    private void knocks() {
      for (int at : places(3, 2)) {
        double px = from(2, 10);
        double direction = between(0, 2 * Math.PI);
        double x = px * Math.cos(direction);
        double y = px * Math.sin(direction);
        double share = chance.nextInt(3) == 0 ? chance.nextDouble() : 0;
        events.add(new NightEvent.Knock(at + 1, share, x, y, px / 4, 6, 0.5));
        add(EventKind.KNOCK, at, at, px);
      }
    }

    private double calmPx2(NightPlan calm, int frame) {
      CauseShares px2 = new NightSimulator(calm).truth(frame + 1).sharesPx2();
      return px2.core() + px2.focus() + px2.trailing() + px2.lens();
    }

    private double corePx2(NightPlan calm) {
      return new NightSimulator(calm).truth(1).sharesPx2().core();
    }

    private double amplitude(double widening, double calmPx2, double across) {
      return 2 * Math.sqrt((widening * widening - 1) * calmPx2 / (1 + across * across));
    }

    private void gusts(NightPlan calm) {
      double px2 = calmPx2(calm, frames / 2);
      double across = between(0.2, 0.9);
      double direction = between(0, 180);
      for (int at : places(2, 10)) {
        int count = 2 + chance.nextInt(7);
        double widening = from(1.27, 1.5);
        for (int k = 0; k < count; k++) {
          double amplitude = amplitude(widening * between(1, 1.15), px2, across);
          int frame = at + k + 1;
          double hertz = between(3, 9);
          events.add(new NightEvent.Gust(frame, frame, amplitude, across, hertz, direction));
        }
        add(EventKind.GUSTS, at, at + count - 1, widening);
      }
    }

    private void breeze(NightPlan calm) {
      double px2 = calmPx2(calm, frames / 2);
      for (int frame = 1; frame <= frames; frame++) {
        double amplitude = amplitude(between(1, 1.08), px2, 0.6);
        events.add(new NightEvent.Gust(frame, frame, amplitude, 0.6, 5, between(0, 180)));
      }
    }

    private void droop() {
      boolean whole = chance.nextInt(3) == 0;
      int first = whole ? 0 : chance.nextInt(frames / 2);
      int least = (int) Math.max(12, Math.ceil(240 / interval));
      int count = Math.min(frames - first, least + chance.nextInt(frames));
      int last = whole ? frames - 1 : first + count - 1;
      double rate = from(0.5, 5);
      // The head sags: its aim moves down, the stars up, to within 40 degrees.
      events.add(new NightEvent.Droop(first + 1, last + 1, rate, between(230, 310)));
      add(theme == Theme.DRIFT ? EventKind.TRACKING_ERROR : EventKind.DROOP, first, last, rate);
    }

    /** Focus error on the axis that widens a calm star so, microns. */
    private static double microns(double widening, double px2) {
      return 4 * F_NUMBER * PITCH_MICRONS * Math.sqrt(px2 * (widening * widening - 1));
    }

    private void creep(NightPlan calm) {
      double px2 = corePx2(calm);
      double hours = frames * interval / 3600;
      boolean whole = chance.nextBoolean();
      int first = whole ? 0 : chance.nextInt(frames / 2);
      double perHour = from(0.2, 4);
      if (perHour * hours > 1.5) {
        perHour = Math.max(0.2, 1.5 / hours);
      }
      List<TimePoint> points = new ArrayList<>();
      for (int i = first; i < frames; i++) {
        double grown = perHour * (i - first) * interval / 3600;
        points.add(new TimePoint(i * interval / 60, microns(1 + grown, px2)));
      }
      focus = points;
      // The star of the first of these frames is as sharp as those before.
      add(EventKind.FOCUS_CREEP, whole ? 0 : first + 1, frames - 1, 100 * perHour);
    }

    private void focusKnocked(NightPlan calm) {
      int at = (int) (frames * between(0.25, 0.75));
      double ratio = from(1.2, 1.6);
      double microns = microns(ratio, corePx2(calm));
      double minutes = at * interval / 60;
      focus = List.of(new TimePoint(minutes - 0.01, 0), new TimePoint(minutes - 0.005, microns));
      add(EventKind.FOCUS_KNOCKED, at, at, ratio);
    }

    private void clouds() {
      for (int at : places(2, 12)) {
        int count = 2 + chance.nextInt(10);
        double mag = from(0.3, 5);
        double glow = chance.nextBoolean() ? 0 : between(0, 0.2);
        events.add(new NightEvent.Cloud(at + 1, at + count, mag, between(0, 0.5), glow));
        add(EventKind.CLOUD, at, at + count - 1, mag);
      }
    }

    private void dew() {
      int first = (int) (frames * between(0.2, 0.6));
      double mag = from(0.32, 4);
      events.add(new NightEvent.Dew(first + 1, frames, mag, 0, 12));
      add(EventKind.DEW, first, frames - 1, mag);
    }

    /** A cloud, then a knock, then wind, then the moon. */
    private void mixed(NightPlan calm) {
      int part = frames / 5;
      double mag = from(0.35, 3);
      events.add(new NightEvent.Cloud(part + 1, part + 4, mag, 0.3, 0));
      add(EventKind.CLOUD, part, part + 3, mag);
      double px = from(2, 10);
      events.add(new NightEvent.Knock(2 * part + 1, 0, px, 0, px / 4, 6, 0.5));
      add(EventKind.KNOCK, 2 * part, 2 * part, px);
      double amplitude = amplitude(from(1.3, 1.5), calmPx2(calm, frames / 2), 0.5);
      events.add(new NightEvent.Gust(3 * part + 1, 3 * part + 3, amplitude, 0.5, 5, 30));
      add(EventKind.GUSTS, 3 * part, 3 * part + 2, 1);
      double brighter = from(0.6, 4);
      double factor = Math.pow(10, 0.4 * brighter);
      events.add(new NightEvent.SkyGlow(4 * part + 1, 4 * part + 2, factor));
      add(EventKind.SKY_BRIGHTER, 4 * part, frames - 1, brighter);
    }

    private void brighter() {
      if (chance.nextInt(3) == 0) {
        int last = (int) (frames * between(0.2, 0.6));
        double dusk = from(0.52, 5);
        events.add(new NightEvent.SkyGlow(1, last + 1, Math.pow(10, -0.4 * dusk)));
        add(EventKind.SKY_BRIGHTER, 0, last, dusk);
        return;
      }
      boolean sudden = chance.nextBoolean();
      int first = (int) (frames * between(0.2, 0.6));
      int last = sudden ? first + 1 : frames - 1;
      double mag = from(0.52, 5);
      events.add(new NightEvent.SkyGlow(first + 1, last + 1, Math.pow(10, 0.4 * mag)));
      add(EventKind.SKY_BRIGHTER, first, frames - 1, mag);
    }

    private void hand(NightPlan calm) {
      int burst = Math.max(6, frames / 6);
      double px2 = calmPx2(calm, 1);
      double decay = seconds * between(0.15, 0.3);
      for (int b = 0; b < frames / burst; b++) {
        double widening = from(1.3, 1.5);
        double rms = Math.sqrt(2 * px2 * (widening * widening - 1));
        // Variance of a sinusoid that decays to 1/e in d, over an exposure T: A² d / (4 T).
        double amplitude = rms * Math.sqrt(4 * seconds / decay);
        int at = b * burst;
        events.add(new NightEvent.HandPress(at + 1, at + 1, amplitude, 5, decay));
        add(EventKind.HAND_ON_SHUTTER, at, at, widening);
      }
    }

    private void reAim() {
      int at = (int) (frames * between(0.25, 0.75));
      double degrees = Math.toDegrees(Math.atan(18 / focalMm)) * between(0.2, 1.5);
      double altitude = Math.min(85, aim.altitudeDeg() + between(-0.3, 0.3) * degrees);
      AimPlan next =
          new AimPlan(
              (aim.azimuthDeg() + degrees / Math.cos(Math.toRadians(aim.altitudeDeg()))) % 360,
              altitude,
              aim.rollDeg(),
              Orientation.NORMAL);
      events.add(new NightEvent.ReAim(at + 1, next));
      add(EventKind.RE_AIM, at, at, degrees);
    }

    private void exposure(NightPlan calm) {
      int at = calm.shots().get(0).count();
      add(EventKind.EXPOSURE_CHANGED, at, at, seconds / 2);
    }

    /** All below what matters: focus 5 % an hour, light 0.1 mag, sky 0.2 mag. */
    private void slowChanges(NightPlan calm) {
      double px2 = corePx2(calm);
      List<TimePoint> points = new ArrayList<>();
      for (int i = 0; i < frames; i++) {
        double grown = 0.05 * i * interval / 3600;
        points.add(new TimePoint(i * interval / 60, microns(1 + Math.min(0.08, grown), px2)));
      }
      focus = points;
      events.add(new NightEvent.SkyGlow(1, frames, Math.pow(10, 0.4 * between(-0.2, 0.2))));
      events.add(new NightEvent.Dew(1, frames, between(0, 0.1), 0, 12));
    }
  }
}
