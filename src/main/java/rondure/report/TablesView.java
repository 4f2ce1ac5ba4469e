package rondure.report;

import java.util.List;

/**
 * The frames that were not measured, and the copies.
 *
 * @param notMeasured frames of the night without a measurement
 * @param leftOut frames that are not the night
 * @param copies exposures present in several files
 */
record TablesView(List<Row> notMeasured, List<Row> leftOut, List<CopyRow> copies) {

  /** Whether there is nothing to tell. */
  boolean isEmpty() {
    return notMeasured.isEmpty() && leftOut.isEmpty() && copies.isEmpty();
  }

  /** Whether copies are all there is to tell. */
  boolean onlyCopies() {
    return notMeasured.isEmpty() && leftOut.isEmpty();
  }

  /** A frame and why it was not measured. */
  record Row(String file, String status, String reason) {}

  /**
   * @param file the one that was read
   * @param others the other files of that exposure
   */
  record CopyRow(String file, String others) {}
}
