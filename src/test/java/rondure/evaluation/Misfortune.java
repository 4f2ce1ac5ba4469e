package rondure.evaluation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import rondure.sim.NightEvent;

/**
 * What a night's trouble does, in numbers: how wide it makes the stars is drawn, the amplitude
 * follows from the closed forms of second moments (line L²/12, disc D²/16, swing A²/2).
 *
 * @param seconds named exposure of each frame
 * @param focusFromPx disc at the start
 * @param focusToPx disc at the end
 */
record Misfortune(
    List<Double> seconds,
    double focusFromPx,
    double focusToPx,
    Gear.Aberrations aberrations,
    boolean tracking,
    List<NightEvent> events) {

  private static final int FRAMES = NightDraw.FRAMES;

  static boolean needsMovingSky(Trouble trouble) {
    return switch (trouble) {
      case TRAILING, LONG_AND_SHORT, FOCUS_AND_TRAILING, GUSTS_AND_TRAILING, LENS_AND_TRAILING ->
          true;
      default -> false;
    };
  }

  static Misfortune draw(Trouble trouble, Gear gear, Dice dice, double cosDeclination) {
    Builder builder = new Builder(gear, dice, cosDeclination);
    builder.apply(trouble);
    return builder.build();
  }

  private static final class Builder {
    private final Gear gear;
    private final Dice dice;
    private final double cosDeclination;
    private final double[] seconds = new double[FRAMES];
    private final List<NightEvent> events = new ArrayList<>();
    private double focusFromPx;
    private double focusToPx;
    private Gear.Aberrations aberrations;
    private boolean tracking;

    Builder(Gear gear, Dice dice, double cosDeclination) {
      this.gear = gear;
      this.dice = dice;
      this.cosDeclination = Math.max(0.25, cosDeclination);
      this.aberrations = Gear.Aberrations.good(dice);
      expose(dice.between(0.02, 0.15) * gear.corePx2());
      focusFromPx = dice.sign() * dice.between(0, 0.7);
      focusToPx = focusFromPx;
    }

    Misfortune build() {
      return new Misfortune(
          Arrays.stream(seconds).boxed().toList(),
          focusFromPx,
          focusToPx,
          aberrations,
          tracking,
          List.copyOf(events));
    }

    /** Second moment that widens the core to a drawn multiple. */
    private double excessPx2() {
      double widening = dice.chance(0.75) ? dice.between(1.35, 2.2) : dice.between(1.05, 1.35);
      return gear.corePx2() * (widening * widening - 1);
    }

    private void expose(double trailExcessPx2) {
      Arrays.fill(seconds, exposure(trailExcessPx2));
    }

    private double exposure(double trailExcessPx2) {
      double trail = Math.sqrt(24 * trailExcessPx2);
      return TrueSeconds.named(NightDraw.secondsOfTrail(gear, trail / cosDeclination));
    }

    void apply(Trouble trouble) {
      switch (trouble) {
        case CALM, MOUNT_GOOD -> tracking = trouble == Trouble.MOUNT_GOOD;
        case SOFT_THROUGHOUT -> defocus(excessPx2(), true);
        case FOCUS_DRIFT -> defocus(excessPx2(), false);
        case TRAILING -> expose(excessPx2());
        case LONG_AND_SHORT -> Arrays.fill(seconds, FRAMES / 2, FRAMES, exposure(excessPx2()));
        case GUSTS -> gusts(0.1 * gear.corePx2(), 3 * gear.corePx2());
        case KNOCK -> knock();
        case DROOP, MOUNT_POOR -> droop(trouble == Trouble.MOUNT_POOR);
        case HAND -> hand();
        case TILT, COMA, ASTIGMATISM -> lens(trouble, excessPx2());
        case DEW -> dew();
        case CLOUD -> cloud();
        default -> two(trouble);
      }
    }

    /** Two causes share one widening, neither less than 30 % of it where both are at work. */
    private void two(Trouble trouble) {
      double whole = gear.corePx2() * (Math.pow(dice.between(1.4, 2.2), 2) - 1);
      double first = dice.between(0.3, 0.7) * whole;
      double second = whole - first;
      if (trouble != Trouble.FOCUS_AND_GUSTS) {
        expose(first);
      }
      switch (trouble) {
        case FOCUS_AND_TRAILING -> defocus(second, dice.chance(0.5));
        case GUSTS_AND_TRAILING -> gusts(second, second);
        case LENS_AND_TRAILING -> lens(Trouble.TILT, second);
        default -> {
          defocus(first, true);
          gusts(second, second);
        }
      }
    }

    private void defocus(double excessPx2, boolean always) {
      focusToPx = dice.sign() * 4 * Math.sqrt(excessPx2);
      focusFromPx = always ? focusToPx : 0.2 * dice.between(-1, 1);
    }

    private void gusts(double leastPx2, double mostPx2) {
      for (int frame = 3; frame <= 5; frame++) {
        double across = dice.between(0.1, 0.5);
        double amplitude = 2 * Math.sqrt(dice.between(leastPx2, mostPx2) / (1 + across * across));
        double hertz = dice.between(1, 6);
        events.add(
            new NightEvent.Gust(frame, frame, amplitude, across, hertz, dice.between(0, 180)));
      }
    }

    private void knock() {
      for (int frame : new int[] {3, 5}) {
        double share = dice.between(0.25, 0.75);
        double shift = Math.sqrt(2 * excessPx2() / (share * (1 - share)));
        double angle = dice.between(0, 2 * Math.PI);
        events.add(
            new NightEvent.Knock(
                frame,
                share,
                shift * Math.cos(angle),
                shift * Math.sin(angle),
                0.3 * shift,
                dice.between(3, 8),
                dice.between(0.2, 0.8)));
      }
    }

    private void droop(boolean mount) {
      tracking = mount;
      double trail = Math.sqrt(24 * excessPx2());
      if (mount) {
        // A mount that follows at all drifts by a part of the sky's motion.
        double drift = dice.between(0.12, 0.35);
        Arrays.fill(seconds, TrueSeconds.named(NightDraw.secondsOfTrail(gear, trail / drift)));
      }
      boolean always = mount || dice.chance(0.4);
      events.add(
          new NightEvent.Droop(
              always ? 1 : 4, FRAMES, trail / seconds[0] * 60, dice.between(0, 360)));
    }

    private void hand() {
      for (int frame : new int[] {1, 4}) {
        double decay = dice.between(0.1, 0.4) * seconds[0];
        double amplitude = Math.sqrt(8 * excessPx2() * seconds[0] / (1.25 * decay));
        events.add(new NightEvent.HandPress(frame, frame, amplitude, dice.between(2, 5), decay));
      }
    }

    /** Shares over the field: tilt x²/3, coma r²/3, astigmatism r⁴; medians from trials. */
    private void lens(Trouble trouble, double excessPx2) {
      double root = dice.sign() * Math.sqrt(excessPx2);
      double turn = dice.between(0, 2 * Math.PI);
      Gear.Aberrations base = aberrations;
      aberrations =
          switch (trouble) {
            case COMA ->
                new Gear.Aberrations(
                    base.tiltRightPx(), base.tiltDownPx(), 0, base.astigmatismPx(), 3 * root);
            case ASTIGMATISM ->
                new Gear.Aberrations(
                    base.tiltRightPx(), base.tiltDownPx(), 0, 20 * root, base.comaPx());
            default ->
                new Gear.Aberrations(
                    8 * root * Math.cos(turn),
                    8 * root * Math.sin(turn),
                    base.curvaturePx(),
                    base.astigmatismPx(),
                    base.comaPx());
          };
    }

    private void dew() {
      events.add(
          new NightEvent.Dew(
              2, FRAMES, dice.between(0.3, 1.3), dice.between(0.05, 0.35), dice.between(5, 14)));
    }

    private void cloud() {
      events.add(
          new NightEvent.Cloud(
              3, 5, dice.between(0.5, 1.6), dice.between(0, 0.7), dice.between(0, 0.8)));
    }
  }
}
