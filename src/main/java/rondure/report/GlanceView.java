package rondure.report;

import java.util.List;

/**
 * The night at a glance.
 *
 * @param inputName the folder's name
 * @param when dates and times of the set
 * @param verdict one sentence
 * @param strip one sign a frame
 * @param nightsTitle heading of the nights, empty when there is nothing to say
 * @param nights what happened in each night, in short
 * @param totals the counts
 * @param uses how many frames serve which use; empty where none was measured
 * @param causes what softened the stars, most frequent first
 * @param best the five best frames
 * @param advice what to do next time
 * @param problems what could not be measured, and why
 * @param remarks the first remarks on the set
 * @param noteTitle name of the notes field
 */
record GlanceView(
    String inputName,
    String when,
    String verdict,
    PictureView strip,
    String nightsTitle,
    List<String> nights,
    List<Total> totals,
    List<String> uses,
    List<CauseRow> causes,
    List<BestRow> best,
    List<String> advice,
    List<String> problems,
    List<String> remarks,
    String noteTitle) {

  /** A count and what it counts. */
  record Total(String number, String label) {}

  /**
   * @param share of the measured frames, in percent of the bar's length
   */
  record CauseRow(PictureView mark, String name, String count, long share) {}

  /**
   * @param href where its entry stands, empty when it has none
   */
  record BestRow(PictureView mark, String file, String href, String figures) {}
}
