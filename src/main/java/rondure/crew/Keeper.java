package rondure.crew;

/** Hears of measurements as soon as they are there, on the threads of the crew, in any order. */
@FunctionalInterface
public interface Keeper {

  /**
   * A file was measured.
   *
   * @param job the file and what was known of it
   * @param contentDigest SHA-256 of all its bytes, the same before and after measuring
   * @param measurement what was measured
   */
  void keep(MeasureJob job, String contentDigest, FrameMeasurement measurement);
}
