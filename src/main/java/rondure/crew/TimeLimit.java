package rondure.crew;

/**
 * How long one file may take.
 *
 * @param seconds by the clock: a slow card reader, a busy computer
 * @param processorSeconds of the worker's own work, on a processor as fast as the one on which the
 *     limit was set: a decoder that loops, or unpacks far more than the file's picture holds
 */
record TimeLimit(int seconds, double processorSeconds) {
  TimeLimit {
    if (seconds < 1 || !(processorSeconds > 0)) {
      throw new IllegalArgumentException(
          "limits must be positive, were " + seconds + " s and " + processorSeconds + " s");
    }
  }

  /** The limit on a computer that is so many times slower. */
  TimeLimit times(double slowness) {
    return new TimeLimit(seconds, processorSeconds * slowness);
  }
}
