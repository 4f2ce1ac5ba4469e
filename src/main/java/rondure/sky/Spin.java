package rondure.sky;

/**
 * An angular velocity in camera axes (x right, y down, z forward, as stored), right-handed.
 *
 * <p>The sky turns in a fixed camera by -ω n, n the north celestial pole, in both hemispheres.
 *
 * @param xRadPerS about the axis to the right
 * @param yRadPerS about the axis down
 * @param zRadPerS about the optical axis
 */
public record Spin(double xRadPerS, double yRadPerS, double zRadPerS) {

  public static final Spin NONE = new Spin(0, 0, 0);

  public Spin {
    if (!(Double.isFinite(xRadPerS) && Double.isFinite(yRadPerS) && Double.isFinite(zRadPerS))) {
      throw new IllegalArgumentException(
          "spin must be finite, was " + xRadPerS + ", " + yRadPerS + ", " + zRadPerS);
    }
  }

  /** The turning sky's: -ω n. */
  public static Spin ofSky(Direction northPole) {
    double rate = -SkyMotion.SIDEREAL_RATE_RAD_PER_S;
    return new Spin(rate * northPole.x(), rate * northPole.y(), rate * northPole.z());
  }

  public Spin plus(Spin other) {
    return new Spin(
        xRadPerS + other.xRadPerS, yRadPerS + other.yRadPerS, zRadPerS + other.zRadPerS);
  }

  public Spin minus(Spin other) {
    return plus(other.times(-1));
  }

  public Spin times(double factor) {
    return new Spin(factor * xRadPerS, factor * yRadPerS, factor * zRadPerS);
  }

  /** Its length, rad/s. */
  public double rateRadPerS() {
    return Math.sqrt(xRadPerS * xRadPerS + yRadPerS * yRadPerS + zRadPerS * zRadPerS);
  }
}
