package rondure.blur;

/**
 * How long the shutter was open in the frames of one nominal exposure: 30 s is often truly 32, 15
 * is 16, the nearest 2^(n/3) (common practice).
 *
 * @param nominalSeconds as the file says
 * @param usedSeconds as the budget uses it: between both where the frames do not tell
 * @param steppedProbability probability that the true time is the nearest 2^(n/3)
 */
public record ExposureReading(
    double nominalSeconds, double usedSeconds, double steppedProbability) {

  /** Nothing but the time itself. */
  static ExposureReading asNominal(double seconds) {
    return new ExposureReading(seconds, seconds, 0);
  }

  /** Standard error of a trail's second moments over these, from not knowing which is true. */
  double trailErrorShare() {
    double ratio = ExposureTimes.steppedSeconds(nominalSeconds) / nominalSeconds;
    double spread = Math.sqrt(steppedProbability * (1 - steppedProbability));
    return Math.abs(ratio * ratio - 1) * spread;
  }
}
