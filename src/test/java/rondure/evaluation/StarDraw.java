package rondure.evaluation;

import java.util.List;
import rondure.sim.NightPlan;
import rondure.sim.NightSimulator;
import rondure.sim.StarPlan;

/**
 * How many stars a night shows: so many that are bright enough for their shapes (SNR 20) stand in
 * the sky of its first frame, land, haze and vignetting taken off, before anything befalls it. Soft
 * frames, and those behind cloud, show fewer.
 */
final class StarDraw {
  static final double MEASURABLE_SNR = 20;

  static final double FEWEST = 60;

  /** More would crowd frames of half a megapixel: these are 28 px apart on average. */
  static final double MOST = 600;

  /** How much fainter than measurable the faintest are. */
  private static final double FAINTER_MAG = 1.3;

  private static final double MOST_PER_SQUARE_DEGREE = 100;
  private static final int ROUNDS = 2;

  private StarDraw() {}

  /** Numbers grow as 10^(0.5 m). */
  static StarPlan guess(Gear gear, double limitMagnitude, double measurable) {
    double squareDegrees = 4 * gear.halfWidthDeg() * gear.halfHeightDeg();
    double dense = measurable / squareDegrees * Math.pow(10, 0.5 * FAINTER_MAG);
    return plan(dense, limitMagnitude + FAINTER_MAG);
  }

  /** The same night with denser, or where that is not enough with brighter, stars. */
  static NightPlan adjusted(NightPlan guess, double measurable) {
    NightPlan plan = guess;
    for (int round = 0; round < ROUNDS; round++) {
      double more = measurable / Math.max(1, count(plan));
      StarPlan stars = plan.stars();
      plan = Plans.with(plan, plan(stars.starsPerSquareDegree() * more, stars.faintestMagnitude()));
    }
    return plan;
  }

  private static StarPlan plan(double perSquareDegree, double faintest) {
    double brighter = Math.max(0, 2 * Math.log10(perSquareDegree / MOST_PER_SQUARE_DEGREE));
    double limit = faintest - brighter;
    return new StarPlan(Math.min(MOST_PER_SQUARE_DEGREE, perSquareDegree), limit - 7.3, limit, 0.3);
  }

  /** Measurable stars of the first frame, were nothing to befall it. */
  static long count(NightPlan plan) {
    return new NightSimulator(Plans.with(plan, List.of(), List.of()))
        .truth(1).stars().stream().filter(s -> s.snr() >= MEASURABLE_SNR).count();
  }
}
