package rondure.sim;

/**
 * The random stars: uniform over the sphere, numbers growing as 10^(0.5 m).
 *
 * @param starsPerSquareDegree down to {@code faintestMagnitude}
 * @param brightestMagnitude no star is brighter
 * @param faintestMagnitude no star is fainter
 * @param colourSpread r.m.s. spread of red over blue light, magnitudes
 */
public record StarPlan(
    double starsPerSquareDegree,
    double brightestMagnitude,
    double faintestMagnitude,
    double colourSpread) {

  public StarPlan {
    Checks.within("starsPerSquareDegree", starsPerSquareDegree, 0, 100);
    Checks.finite("brightestMagnitude", brightestMagnitude);
    Checks.within("faintestMagnitude", faintestMagnitude, brightestMagnitude, 30);
    Checks.within("colourSpread", colourSpread, 0, 2);
  }
}
