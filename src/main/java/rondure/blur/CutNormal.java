package rondure.blur;

import org.hipparchus.special.Erf;

/**
 * A normal law of which only what lies between 0 and a limit counts.
 *
 * @param mean of that part
 * @param meanSquare of that part
 * @param inside share of the law that it is, at least 1e-6
 */
record CutNormal(double mean, double meanSquare, double inside) {
  static CutNormal of(double mean, double sigma, double most) {
    double low = -mean / sigma;
    double high = (most - mean) / sigma;
    double inside = (Erf.erfc(-high / Math.sqrt(2)) - Erf.erfc(-low / Math.sqrt(2))) / 2;
    if (inside < 1e-6) {
      double nearest = Math.max(0, Math.min(most, mean));
      return new CutNormal(nearest, nearest * nearest, 1e-6);
    }
    double shift = (density(low) - density(high)) / inside;
    double cut = Math.max(0, Math.min(most, mean + sigma * shift));
    double spread = 1 + (low * density(low) - high * density(high)) / inside - shift * shift;
    double variance = sigma * sigma * Math.max(0, Math.min(1, spread));
    return new CutNormal(cut, Math.min(most * most, cut * cut + variance), inside);
  }

  private static double density(double x) {
    return Math.exp(-x * x / 2) / Math.sqrt(2 * Math.PI);
  }
}
