package rondure.sim;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * How the camera turns about its aim during one exposure: gusts, knocks, droop, hands.
 *
 * <p>Every cause adds to a shift (px at the centre, x right, y down) and a roll (rad). A shift of
 * the image by (dx, dy) is a camera rotation by (dy, -dx) p/f about its x and y axes.
 */
final class CameraMotion {
  /** Adds the shift and roll of one cause at a time of the night to {@code shift}. */
  private interface Cause {
    void add(double nightSeconds, double[] shift);
  }

  private final List<Cause> causes = new ArrayList<>();
  private final double pixelsPerRadian;
  private double highestHz;

  CameraMotion(NightPlan plan, List<Exposure> timetable, Exposure exposure) {
    this.pixelsPerRadian = plan.pixelsPerRadian();
    for (int i = 0; i < plan.events().size(); i++) {
      SplittableRandom chance = Chance.of(plan.seed(), exposure.number(), i, 71);
      NightEvent event = plan.events().get(i);
      boolean during =
          exposure.number() >= event.firstFrame() && exposure.number() <= event.lastFrame();
      if (event instanceof NightEvent.Gust gust && during) {
        addGust(gust, chance, plan.camera().cornerRadiusPx());
      } else if (event instanceof NightEvent.HandPress hand && during) {
        addHand(hand, chance, exposure.startSeconds());
      } else if (event instanceof NightEvent.Knock knock && knock.frame() <= exposure.number()) {
        addKnock(knock, timetable, exposure);
      } else if (event instanceof NightEvent.Droop droop
          && droop.firstFrame() <= exposure.number()) {
        addDroop(droop, timetable);
      }
    }
  }

  /** The highest frequency of the path, Hz; 0 when nothing vibrates. */
  double highestHz() {
    return highestHz;
  }

  /** Shift in px and roll in rad at a time of the night. */
  double[] shift(double nightSeconds) {
    double[] shift = new double[3];
    for (Cause cause : causes) {
      cause.add(nightSeconds, shift);
    }
    return shift;
  }

  /** The matrix from the aimed camera's axes to the moved camera's axes. */
  double[] turn(double nightSeconds) {
    double[] shift = shift(nightSeconds);
    return Turn.transposed(
        Turn.about(shift[1] / pixelsPerRadian, -shift[0] / pixelsPerRadian, shift[2]));
  }

  private void addGust(NightEvent.Gust gust, SplittableRandom chance, double cornerRadiusPx) {
    highestHz = Math.max(highestHz, gust.frequencyHz() * 1.31);
    double along = 2 * Math.PI * gust.frequencyHz();
    double phase = 2 * Math.PI * chance.nextDouble();
    double phaseAcross = 2 * Math.PI * chance.nextDouble();
    double phaseRoll = 2 * Math.PI * chance.nextDouble();
    double cos = Math.cos(Math.toRadians(gust.directionDeg()));
    double sin = Math.sin(Math.toRadians(gust.directionDeg()));
    double acrossPx = gust.amplitudePx() * gust.acrossShare();
    causes.add(
        (t, shift) -> {
          double main = gust.amplitudePx() * Math.sin(along * t + phase);
          double across = acrossPx * Math.sin(1.13 * along * t + phaseAcross);
          shift[0] += cos * main - sin * across;
          shift[1] += sin * main + cos * across;
          shift[2] += 0.3 * acrossPx / cornerRadiusPx * Math.sin(1.31 * along * t + phaseRoll);
        });
  }

  private void addHand(NightEvent.HandPress hand, SplittableRandom chance, double start) {
    highestHz = Math.max(highestHz, hand.frequencyHz() * 1.2);
    double direction = 2 * Math.PI * chance.nextDouble();
    double phase = 2 * Math.PI * chance.nextDouble();
    double along = 2 * Math.PI * hand.frequencyHz();
    causes.add(
        (t, shift) -> {
          double amplitude =
              hand.amplitudePx() * Math.exp(-Math.max(0, t - start) / hand.decaySeconds());
          double main = amplitude * Math.sin(along * t + phase);
          double across = 0.5 * amplitude * Math.sin(1.2 * along * t + 2 * phase);
          shift[0] += Math.cos(direction) * main - Math.sin(direction) * across;
          shift[1] += Math.sin(direction) * main + Math.cos(direction) * across;
        });
  }

  private void addKnock(NightEvent.Knock knock, List<Exposure> timetable, Exposure exposure) {
    if (knock.frame() > timetable.size()) {
      return;
    }
    Exposure hit = timetable.get(knock.frame() - 1);
    double moment = hit.startSeconds() + knock.atShare() * hit.openSeconds();
    if (exposure.startSeconds() < moment + 12 * knock.ringDecaySeconds()) {
      highestHz = Math.max(highestHz, knock.ringHz());
    }
    double length = Math.hypot(knock.shiftXPx(), knock.shiftYPx());
    double cos = length > 0 ? knock.shiftXPx() / length : 1;
    double sin = length > 0 ? knock.shiftYPx() / length : 0;
    causes.add(
        (t, shift) -> {
          double since = t - moment;
          if (since >= 0) {
            double ring =
                knock.ringPx()
                    * Math.exp(-since / knock.ringDecaySeconds())
                    * Math.sin(2 * Math.PI * knock.ringHz() * since);
            shift[0] += knock.shiftXPx() + cos * ring;
            shift[1] += knock.shiftYPx() + sin * ring;
          }
        });
  }

  private void addDroop(NightEvent.Droop droop, List<Exposure> timetable) {
    double from = timetable.get(droop.firstFrame() - 1).startSeconds();
    double until = timetable.get(Math.min(droop.lastFrame(), timetable.size()) - 1).endSeconds();
    double cos = Math.cos(Math.toRadians(droop.directionDeg()));
    double sin = Math.sin(Math.toRadians(droop.directionDeg()));
    causes.add(
        (t, shift) -> {
          double minutes = (Math.min(Math.max(t, from), until) - from) / 60;
          shift[0] += cos * droop.pxPerMinute() * minutes;
          shift[1] += sin * droop.pxPerMinute() * minutes;
        });
  }
}
