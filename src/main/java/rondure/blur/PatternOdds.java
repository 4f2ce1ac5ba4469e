package rondure.blur;

/**
 * Whether the directions of a smear turn over the field as the sky does, or as a turn of the camera
 * draws them.
 */
final class PatternOdds {

  /** Neighbouring stars share what no lens model describes: a third counts as independent. */
  private static final double INDEPENDENT_SHARE = 1 / 3.0;

  private static final double MOST_LOG_ODDS = 3;

  /** A trail of any length can also be a turn of the camera about its axis: no proof. */
  private static final double MOST_LOG_ODDS_OF_ANY_LENGTH = 1.5;

  /** Half of two more parameters' chi² at 95 %. */
  private static final double COST_OF_FREEDOM = 3;

  /** Directions that a real lens bends in ways not modelled: two such patterns are alike. */
  private static final double LENS_MISFIT_PX2 = 0.1;

  private static final double LENS_MISFIT_SHARE = 0.05;

  private PatternOdds() {}

  /**
   * Log-odds for the sky.
   *
   * @param lengthKnown whether the facts tell how long a trail can be
   */
  static double of(SmearModel shake, SmearModel trail, SmearField field, boolean lengthKnown) {
    double freedom = Math.max(1, 2.0 * field.count() - 4);
    double scale = Math.max(1, Math.min(shake.loss(), trail.loss()) / freedom);
    double odds = INDEPENDENT_SHARE * (shake.loss() - trail.loss()) / (2 * scale);
    double bounded =
        lengthKnown
            ? Math.max(-MOST_LOG_ODDS, Math.min(MOST_LOG_ODDS, odds))
            : Math.max(0, Math.min(MOST_LOG_ODDS_OF_ANY_LENGTH, odds - COST_OF_FREEDOM));
    return bounded * Math.min(1, Math.pow(difference(shake, trail, field), 2));
  }

  /** How far the two patterns differ, r.m.s., over what a real lens may hide. */
  private static double difference(SmearModel shake, SmearModel trail, SmearField field) {
    double sum = 0;
    for (int i = 0; i < field.count(); i++) {
      double[] one = shake.at().spin2(field.xs[i], field.ys[i]);
      double[] two = trail.at().spin2(field.xs[i], field.ys[i]);
      sum += Math.pow(one[0] - two[0], 2) + Math.pow(one[1] - two[1], 2);
    }
    double hidden = LENS_MISFIT_PX2 + LENS_MISFIT_SHARE * trail.smearPx2();
    return Math.sqrt(sum / Math.max(1, field.count())) / hidden;
  }
}
