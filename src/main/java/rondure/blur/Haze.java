package rondure.blur;

import java.util.EnumMap;
import java.util.Map;

/** What a loss of light does to a verdict by shapes alone. */
final class Haze {
  /** Vignetting, air and neighbours that the chain of light leaves. */
  static final double LEAST_ERROR_MAG = 0.05;

  /** Clear nights are the rule; between this and equal odds lies what one believes of the sky. */
  private static final double UNSEEN_SHARE = 0.1;

  /** Moonrise and dawn brighten the sky as well: a cloud is as likely as not. */
  private static final double DIMMED_SHARE = 0.5;

  private static final double LOSS_MAG = -2.5 * Math.log10(1 - FrameLight.HAZE_LOSS_SHARE);

  private Haze() {}

  /** Widening is named first: only what "none" had goes to haze. */
  static Map<Cause, Double> applied(Map<Cause, Double> byShape, FrameLight.Loss loss) {
    return given(byShape, probability(loss));
  }

  /** Where a loss of light cannot be told, some of the frames that look sharp are hazy. */
  static Map<Cause, Double> unseen(Map<Cause, Double> byShape) {
    return given(byShape, UNSEEN_SHARE);
  }

  /**
   * The same where the sky's brightness may tell: another exposure changes the light of stars and
   * sky alike, a cloud takes the stars' and not the sky's.
   *
   * @param starsOverSky the stars' light over the sky's, relative to the scene's other frames
   */
  static Map<Cause, Double> unseen(Map<Cause, Double> byShape, double starsOverSky) {
    boolean dimmed = starsOverSky < 1 - FrameLight.HAZE_LOSS_SHARE;
    return given(byShape, dimmed ? DIMMED_SHARE : UNSEEN_SHARE);
  }

  /** Dew as often as any other cause, which haze is two kinds of: dew, and what leaves no halo. */
  private static final double DEW_ODDS = 0.5;

  /**
   * The same of a frame that nothing can be compared with: where its average star would show no
   * halo if there were one, dew is as likely as it was; where it would, it is less so.
   *
   * @param halo what was read about its stars
   */
  static Map<Cause, Double> unseen(Map<Cause, Double> byShape, Halo halo) {
    double odds = DEW_ODDS * halo.dewLikelihood();
    return given(byShape, UNSEEN_SHARE + (1 - UNSEEN_SHARE) * odds / (1 + odds));
  }

  /** Haze takes this share of what "none" had. */
  static Map<Cause, Double> given(Map<Cause, Double> byShape, double share) {
    Map<Cause, Double> result = new EnumMap<>(byShape);
    result.put(Cause.NONE, byShape.get(Cause.NONE) * (1 - share));
    result.merge(Cause.HAZE, byShape.get(Cause.NONE) * share, Double::sum);
    return result;
  }

  /** Probability that at least 35 % of the light is lost; logistic of 1.7 σ for the normal law. */
  static double probability(FrameLight.Loss loss) {
    double sigmas = (loss.lossMag() - LOSS_MAG) / Math.hypot(loss.errorMag(), LEAST_ERROR_MAG);
    return Excess.logistic(1.7 * sigmas);
  }
}
