package rondure.blur;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rondure.base.Moments;
import rondure.base.RobustStats;
import rondure.stars.Star;
import rondure.stars.StarField;

/**
 * Light too faint and too far out for the shape of a single star, seen in the average of many: the
 * path of a hand on the shutter or of a short knock, a swing that dies away.
 *
 * @param spin2Px2 stretch (spin-2 length) of the whole path beyond the median star's, with what
 *     lies beyond the average star's picture
 * @param errorPx2 its standard error, that of the path's reach included
 * @param angleRad direction of that stretch, rad from +x towards +y
 * @param certainty χ² of the path over none
 */
record FaintTail(double spin2Px2, double errorPx2, double angleRad, double certainty) {
  /** Fewer stars average too little noise away. */
  private static final int LEAST_STARS = 15;

  /** One zone alone cannot tell the camera's tail from the lens's. */
  private static final int LEAST_ZONES = 2;

  /** Amplitudes of the swing that are tried, half-maximum lengths of the stars. */
  private static final double[] REACHES = {1.4, 2, 2.6, 3.4, 4.4, 5.8};

  /** Five standard errors: rings are many, and their errors no more than estimates. */
  private static final double SURE = 25;

  /** The shortest reach is what a trail leaves beyond the model of its core. */
  private static final double BEYOND_SHORTEST = 8;

  /** χ² by which a reach may be worse than the best. */
  private static final double AS_WELL = 8;

  /** Part of the exposure that fades in less leaves no more than the sky's unevenness. */
  private static final double LEAST_PART = 0.07;

  /** What fades no faster is no tail: the shapes of single stars hold it. */
  private static final double MOST_PART = 0.5;

  /** A stretch of the single stars, over their second moment, that may leave a false tail. */
  private static final double LONG_STRETCH = 0.1;

  /** Beside stars drawn out so far lie the neighbours' ends: no tail can be told. */
  private static final double LEAST_ROUNDNESS = 0.45;

  /** Beside a wider core, misfits of the star's model look like tails, half-maximum px. */
  private static final double WIDEST_CORE_PX = 4;

  private static final double LEAST_PX2 = 0.05;

  /** Hands press to one side and stir across: paths of a second simulator read so far off. */
  private static final double PATH_ERROR = 0.25;

  private static final double NARROWEST_SIGMA_PX = 0.6;

  /** The tail of a field's average stars, when it has one beyond doubt. */
  static Optional<FaintTail> of(StarField field, FieldShape shape) {
    if (shape.starCount() < LEAST_STARS
        || shape.minorFwhmPx() > WIDEST_CORE_PX
        || shape.roundness() < LEAST_ROUNDNESS) {
      return Optional.empty();
    }
    List<TailField> fits = fits(field);
    return fits.stream()
        .min(Comparator.comparingDouble(TailField::chi2))
        .filter(best -> certainty(fits, best) > SURE)
        .filter(best -> best.part() > LEAST_PART && best.part() < MOST_PART)
        .filter(best -> -2 * best.logGainOf(fits.get(0)) > BEYOND_SHORTEST)
        .filter(best -> isAlong(best, shape))
        .map(best -> over(fits, best, shape.moments()))
        .filter(tail -> tail.spin2Px2() > LEAST_PX2);
  }

  /** The largest of those reaches that fit about as well. */
  private static double certainty(List<TailField> fits, TailField best) {
    return fits.stream()
        .skip(1)
        .filter(fit -> -2 * best.logGainOf(fit) < AS_WELL)
        .mapToDouble(TailField::certainty)
        .max()
        .orElse(0);
  }

  /** Across a long trail lies what the trail's model took too much from the rings. */
  private static boolean isAlong(TailField tail, FieldShape shape) {
    Moments single = shape.moments();
    double along = (single.xxPx2() - single.yyPx2()) / 2;
    return single.spin2Px2() < LONG_STRETCH * single.meanPx2()
        || tail.along() * along + tail.diagonal() * single.xyPx2() > 0;
  }

  /** The fits of every reach, shortest first; none where too few zones have an average star. */
  private static List<TailField> fits(StarField field) {
    double fwhm = median(field.stars(), true);
    double sigma =
        Math.max(NARROWEST_SIGMA_PX, median(field.stars(), false) / Moments.FWHM_PER_SIGMA);
    List<TailZones.Rings> zones = TailZones.of(field, fwhm);
    List<TailField> fits = new ArrayList<>();
    if (zones.size() >= LEAST_ZONES) {
      for (double reach : REACHES) {
        fits.add(
            TailField.of(
                reach * fwhm, zones.stream().map(z -> z.fitted(reach * fwhm, sigma)).toList()));
      }
    }
    return fits;
  }

  private static double median(List<Star> stars, boolean major) {
    return RobustStats.median(
        stars.stream().mapToDouble(s -> major ? s.fwhmMajorPx() : s.fwhmMinorPx()).toArray());
  }

  /**
   * What single stars show is taken off. Mean over the reaches by their likelihoods, of logarithms:
   * the farthest would rule the plain mean.
   */
  private static FaintTail over(List<TailField> fits, TailField best, Moments single) {
    double sum = 0;
    double first = 0;
    double second = 0;
    for (TailField fit : fits) {
      double weight = Math.exp(best.logGainOf(fit));
      double log = Math.log(Math.max(LEAST_PX2, fit.beyondPx2(single)));
      sum += weight;
      first += weight * log;
      second += weight * log * log;
    }
    double mean = Math.exp(first / sum);
    double ofReach = mean * Math.sqrt(Math.max(0, second / sum - first * first / (sum * sum)));
    double ofPart = best.swingPx2() * best.error() / best.part();
    double error = Math.hypot(Math.hypot(ofReach, ofPart), PATH_ERROR * mean);
    return new FaintTail(mean, error, best.angleRad(), certainty(fits, best));
  }
}
