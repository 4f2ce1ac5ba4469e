package rondure.blur;

import java.util.Arrays;

/**
 * How much of coma's second moments the star fit shows. An ellipse fitted to a star whose coma is
 * wide beside its core settles on the bright head and leaves the faint tail out.
 *
 * <p>Coma of coefficient c has the moments c²/2 along the radius and c²/6 across (see {@link
 * ComaTails}); shown is the share s + (1 − s) / (1 + (u/h)²) of them, u = c² over the second moment
 * of all else in the star, with s = 0.36 and h = 10.3 along, 0.47 and 15.1 across. So do Gaussians
 * fitted by least squares (scipy, {@code coma_shares.py}) to the rays of an evenly lit pupil under
 * a Gaussian core, in noise of the sky and of a star that adds three times as much in its middle,
 * within 3.5 σ: to 0.02 up to u = 36. Profiles with wings follow the half-maximum: with a Moffat
 * profile fitted to a Moffat core of exponent 3 and 4.5 the same holds, to 0.08, where second
 * moments count as those of the Gaussian of the same half-maximum widths.
 */
final class SeenComa {
  private static final double ALONG_AT_LEAST = 0.36;
  private static final double ALONG_HALF = 10.3;
  private static final double ACROSS_AT_LEAST = 0.47;
  private static final double ACROSS_HALF = 15.1;

  /** Cores are not finer, whatever a fit tries. */
  private static final double LEAST_EVEN_PX2 = 0.05;

  private SeenComa() {}

  /**
   * Coma where a star stands.
   *
   * @param px2 square of its coefficient
   * @param growth of that with the scene's coma
   * @param cos of twice the angle of the radius
   * @param sin likewise
   * @param peaked see {@link FrameStars#peaked}
   */
  record Here(double px2, double growth, double cos, double sin, double peaked) {}

  /**
   * Adds the coma shown to a star's three numbers, and what it changes to their slopes.
   *
   * @param star what all else makes of it: round part, spin-2 along the frame's axes
   * @param slopes of these with respect to all parameters; those with respect to the coma are
   *     filled
   */
  static void add(double[] star, double[][] slopes, Here coma) {
    double u = coma.px2 / (coma.peaked * Math.max(LEAST_EVEN_PX2, star[0]));
    double along = share(u, ALONG_AT_LEAST, ALONG_HALF) / (2 * coma.peaked);
    double across = share(u, ACROSS_AT_LEAST, ACROSS_HALF) / (6 * coma.peaked);
    double alongGains = u * slope(u, ALONG_AT_LEAST, ALONG_HALF) / (2 * coma.peaked);
    double acrossGains = u * slope(u, ACROSS_AT_LEAST, ACROSS_HALF) / (6 * coma.peaked);
    if (u > 0) {
      // d(c² share(c² / even)) / d even = -u² d share / du
      double perEven = -u * coma.peaked / 2;
      double round = perEven * (alongGains + acrossGains);
      double spin2 = perEven * (alongGains - acrossGains);
      for (double[] of : slopes) {
        double wider = of[0];
        turned(of, round * wider, spin2 * wider, coma);
      }
    }
    turned(star, coma.px2 * (along + across) / 2, coma.px2 * (along - across) / 2, coma);
    double[] own = slopes[FrameModel.COMA];
    Arrays.fill(own, 0);
    double radial = along + alongGains;
    double tangential = across + acrossGains;
    turned(
        own,
        coma.growth * (radial + tangential) / 2,
        coma.growth * (radial - tangential) / 2,
        coma);
  }

  private static void turned(double[] into, double round, double spin2, Here coma) {
    into[0] += round;
    into[1] += spin2 * coma.cos;
    into[2] += spin2 * coma.sin;
  }

  private static double share(double u, double least, double half) {
    double times = u / half;
    return least + (1 - least) / (1 + times * times);
  }

  /** How the share changes with u. */
  private static double slope(double u, double least, double half) {
    double times = u / half;
    double below = 1 + times * times;
    return -2 * (1 - least) * times / (half * below * below);
  }
}
