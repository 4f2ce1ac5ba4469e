package rondure.report;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import rondure.report.layout.Wording;
import rondure.sky.TrailRate;

/** Where a camera may look, and how fast the sky moves there: the aims of tables and charts. */
final class TrailAims {
  static final String OWN = "course.aim.own";
  private static final double SAME_AIM_DEG = 0.5;
  private static final double[] DECLINATIONS_DEG = {0, 45, 80};

  private TrailAims() {}

  /** The scene's own aim first, where it is known, then the others from the equator to a pole. */
  static Map<String, TrailRate> of(SceneFigures figures, Wording words) {
    double focalPx = figures.focalLengthPx().orElseThrow();
    Map<String, TrailRate> aims = new LinkedHashMap<>();
    Optional<Double> own = figures.scene().solution().centreDeclinationDeg().map(Math::abs);
    own.ifPresent(deg -> aims.put(words.say(OWN), new TrailRate(focalPx, deg)));
    for (double deg : DECLINATIONS_DEG) {
      if (own.filter(aim -> Math.abs(aim - deg) < SAME_AIM_DEG).isEmpty()) {
        aims.put(words.say("course.aim." + Figures.plain(0, deg)), new TrailRate(focalPx, deg));
      }
    }
    return aims;
  }
}
