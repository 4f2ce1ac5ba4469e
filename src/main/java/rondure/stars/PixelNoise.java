package rondure.stars;

/**
 * How uncertain a pixel is: variance = sky² + gain · starlight.
 *
 * @param skyCounts noise of the sky, 1 σ, positive
 * @param gain variance per count of starlight: photon noise, and what models miss; 0 when unknown
 */
record PixelNoise(double skyCounts, double gain) {
  PixelNoise {
    if (!(skyCounts > 0 && gain >= 0)) {
      throw new IllegalArgumentException(
          "noise must be > 0 and gain >= 0, were " + skyCounts + " and " + gain);
    }
  }

  /** Weight of a pixel against one of bare sky. */
  double weight(double starCounts) {
    return 1 / (1 + gain * Math.max(0, starCounts) / (skyCounts * skyCounts));
  }
}
