package rondure.sky;

import java.util.List;

/**
 * How far the pole may be off: by the frames' noise, by the camera, and by a tripod that moved
 * while it seemed to stand. With a clock the sky's rate holds the camera; without, the same noise
 * bends the camera and the path, so that both errors add up.
 */
final class PoleDoubt {
  private static final double OMEGA = SkyMotion.SIDEREAL_RATE_RAD_PER_S;

  /** A rate that is off by less than so many standard errors proves no creep. */
  private static final double PROVEN_SIGMAS = 2;

  private final List<PieceRate> rivals;
  private final List<PieceRate> used;
  private final Sight sight;

  /**
   * @param rivals stretches that might show the sky
   * @param used those that agree on it
   */
  PoleDoubt(List<PieceRate> rivals, List<PieceRate> used, Sight sight) {
    this.rivals = rivals;
    this.used = used;
    this.sight = sight;
  }

  /**
   * Standard error of the pole's direction, times the sidereal rate.
   *
   * @param best the stretch by which the others were chosen
   */
  double errorRadPerS(PoleFit fit, PieceRate best) {
    CameraDoubt.Bend bend =
        sight.trust().doubt().bend(sight.camera(), best.rate().turned(best.turn()));
    double bent = bend.acrossRad() * OMEGA;
    double error =
        sight.byClock() ? Math.hypot(fit.errorRadPerS(), bent) : fit.errorRadPerS() + bent;
    error = Math.hypot(error, Math.sqrt(2) * creepAlong(best, bend.alongShare()));
    return Math.hypot(error, scatter(fit.spin()));
  }

  /**
   * What the rate is off beyond its error is a creep along the sky's motion; one across it, in
   * either way, is as likely and does not show.
   */
  private static double creepAlong(PieceRate best, double bentShare) {
    double off = best.rate().length() / OMEGA - 1;
    double error = Math.hypot(best.alongError() / OMEGA, bentShare);
    return Math.abs(off) > PROVEN_SIGMAS * error ? OMEGA * Math.sqrt(off * off - error * error) : 0;
  }

  /** R.m.s. difference from the sky of stretches that show another, over the rivals' time. */
  private double scatter(Vec sky) {
    double sum = 0;
    for (PieceRate rate : rivals) {
      double off = used.contains(rate) ? 0 : rate.rate().minus(sky).length();
      sum += rate.seconds() * off * off;
    }
    return sum > 0 ? Math.sqrt(sum / SkyVote.seconds(rivals)) : 0;
  }
}
