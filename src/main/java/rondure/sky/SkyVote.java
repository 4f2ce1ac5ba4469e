package rondure.sky;

import java.util.Comparator;
import java.util.List;

/**
 * What stretches of steady motion say of the sky: it is the spin at the sidereal rate on which the
 * longest time of them agrees.
 *
 * @param kind of motion
 * @param sky the sky's spin in its own axes, rad/s; zero when it stays
 * @param poleErrorRadPerS standard error of that spin's direction, times its rate
 * @param statisticalErrorRadPerS the part of it that the frames' noise makes
 * @param settled whether enough of the time agrees; else each stretch goes by what its stars did
 */
record SkyVote(
    Kind kind, Vec sky, double poleErrorRadPerS, double statisticalErrorRadPerS, boolean settled) {
  private static final double OMEGA = SkyMotion.SIDEREAL_RATE_RAD_PER_S;
  private static final double LARGEST_TRACKED_SHARE = 0.5;
  private static final double LARGEST_TRACKED_ERROR = 0.15;

  /** The sky is in doubt where less of the time that might show it agrees. */
  private static final double LEAST_AGREEING_SHARE = 0.4;

  private static final double AGREEING_CHI2 = 20;
  private static final double SIDEREAL_SIGMAS = 4;

  /** What kind of motion was found. */
  enum Kind {
    TURNS,
    TRACKS,
    /** Too little motion for what it was measured with. */
    UNKNOWN
  }

  /** What is taken where no stretch tells anything: the last guess of the sky. */
  static SkyVote none(Vec sky) {
    return new SkyVote(Kind.UNKNOWN, sky, 0, 0, true);
  }

  /** A vote by stretches, which may be none. */
  static SkyVote of(List<PieceRate> rates, Sight sight, Vec guess) {
    if (rates.isEmpty()) {
      return none(guess);
    }
    PieceRate longest = rates.stream().max(Comparator.comparingDouble(PieceRate::seconds)).get();
    boolean scaleKnown = sight.trust().scaleKnown();
    if (isSlow(rates) && (scaleKnown || !sight.byClock())) {
      boolean sure = longest.rmsError() < LARGEST_TRACKED_ERROR * OMEGA;
      return new SkyVote(sure ? Kind.TRACKS : Kind.UNKNOWN, Vec.ZERO, 0, 0, true);
    }
    if (!scaleKnown) {
      double error = sight.byClock() ? longest.rmsError() * Math.sqrt(3) : OMEGA;
      return new SkyVote(Kind.TURNS, longest.rate(), error, error, false);
    }
    return turning(rates, sight);
  }

  private static boolean isSlow(List<PieceRate> rates) {
    double slow =
        seconds(
            rates.stream().filter(r -> r.rate().length() < LARGEST_TRACKED_SHARE * OMEGA).toList());
    return slow > seconds(rates) / 2;
  }

  private static SkyVote turning(List<PieceRate> rates, Sight sight) {
    double slack = sight.trust().scaleError() * OMEGA;
    PieceRate best = best(rates, slack);
    List<PieceRate> agreeing =
        rates.stream().filter(r -> agrees(r, onSphere(best.rate()), slack)).toList();
    List<PieceRate> used = agreeing.isEmpty() ? List.of(best) : agreeing;
    List<PieceRate> rivals = rates.stream().filter(r -> isSidereal(r, slack)).toList();
    PoleFit fit = PoleFit.of(used, sight.trust().scaleError());
    boolean settled =
        !agreeing.isEmpty() && seconds(agreeing) >= LEAST_AGREEING_SHARE * seconds(rivals);
    double error =
        new PoleDoubt(agreeing.isEmpty() ? rates : rivals, used, sight).errorRadPerS(fit, best);
    return new SkyVote(Kind.TURNS, fit.spin(), error, fit.errorRadPerS(), settled);
  }

  /** Whether a stretch may show the sky alone: a creep adds to the rate, or takes from it. */
  private static boolean isSidereal(PieceRate rate, double slackRadPerS) {
    double error = Math.hypot(rate.rmsError(), slackRadPerS);
    return Math.abs(rate.rate().length() - OMEGA) < SIDEREAL_SIGMAS * error;
  }

  static double seconds(List<PieceRate> rates) {
    return rates.stream().mapToDouble(PieceRate::seconds).sum();
  }

  private static Vec onSphere(Vec rate) {
    return rate.withLength(OMEGA);
  }

  private static boolean agrees(PieceRate rate, Vec spin, double slackRadPerS) {
    return rate.chi2(spin, slackRadPerS) < AGREEING_CHI2;
  }

  /** The stretch with whose sky the longest time agrees. */
  private static PieceRate best(List<PieceRate> rates, double slackRadPerS) {
    PieceRate best = null;
    double most = -1;
    for (PieceRate candidate : rates) {
      Vec spin = onSphere(candidate.rate());
      double time = seconds(rates.stream().filter(r -> agrees(r, spin, slackRadPerS)).toList());
      double score = time + 1e-3 * candidate.seconds();
      if (score > most) {
        best = candidate;
        most = score;
      }
    }
    return best;
  }
}
