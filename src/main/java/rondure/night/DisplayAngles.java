package rondure.night;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import rondure.base.Moments;
import rondure.base.Orientation;
import rondure.blur.Evidence;
import rondure.blur.Verdict;

/** Turns the angles of a verdict from stored to displayed pictures, as people see them. */
final class DisplayAngles {
  private static final String ANGLE = "angleDeg";

  private DisplayAngles() {}

  static Verdict of(Verdict stored, Orientation orientation) {
    List<Evidence> turned =
        stored.evidence().stream().map(evidence -> turned(evidence, orientation)).toList();
    return new Verdict(stored.cause(), stored.probabilities(), stored.undecidedBetween(), turned);
  }

  private static Evidence turned(Evidence evidence, Orientation orientation) {
    Map<String, Double> values = new HashMap<>(evidence.values());
    values.computeIfPresent(ANGLE, (name, angle) -> displayDeg(angle, orientation));
    return new Evidence(evidence.kind(), values);
  }

  /** A direction, 0 to 180°, as displayed. */
  static double displayDeg(double storedDeg, Orientation orientation) {
    Moments line = Moments.line(1, Math.toRadians(storedDeg));
    return Math.toDegrees(orientation.display(line).positionAngleRad());
  }
}
