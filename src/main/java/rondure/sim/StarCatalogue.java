package rondure.sim;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Random stars over the whole sphere. */
final class StarCatalogue {
  private static final double SPHERE_SQUARE_DEGREES = 4 * Math.PI * Math.pow(180 / Math.PI, 2);

  private StarCatalogue() {}

  /**
   * A star.
   *
   * @param number from 0, the same in every frame of the night
   * @param x equatorial unit vector
   * @param y equatorial unit vector
   * @param z equatorial unit vector, to the north celestial pole
   * @param magnitude brightness in green light
   * @param redness how much brighter it is in red than in blue, magnitudes
   */
  record CatalogueStar(int number, double x, double y, double z, double magnitude, double redness) {

    double[] direction() {
      return new double[] {x, y, z};
    }

    /** Light in a channel over the light in green. */
    double colourFactor(int channel) {
      return Math.pow(10, 0.4 * redness * (1 - channel) / 2);
    }
  }

  /** The stars of a plan; cumulative numbers grow as 10^(0.5 m). */
  static List<CatalogueStar> of(NightPlan plan) {
    StarPlan stars = plan.stars();
    int count = (int) Math.round(stars.starsPerSquareDegree() * SPHERE_SQUARE_DEGREES);
    double span = stars.faintestMagnitude() - stars.brightestMagnitude();
    double brightShare = Math.pow(10, -0.5 * span);
    SplittableRandom chance = Chance.of(plan.seed(), 11);
    List<CatalogueStar> list = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      double z = 2 * chance.nextDouble() - 1;
      double rightAscension = 2 * Math.PI * chance.nextDouble();
      double rank = brightShare + (1 - brightShare) * chance.nextDouble();
      double magnitude = stars.faintestMagnitude() + 2 * Math.log10(rank);
      double redness = stars.colourSpread() * chance.nextGaussian();
      double across = Math.sqrt(1 - z * z);
      list.add(
          new CatalogueStar(
              i,
              across * Math.cos(rightAscension),
              across * Math.sin(rightAscension),
              z,
              magnitude,
              redness));
    }
    return list;
  }
}
