package rondure.report;

import java.util.List;

/**
 * The night at a glance.
 *
 * @param inputName the folder's name
 * @param when dates and times of the set
 * @param verdict one sentence
 * @param grades how many frames got which grade, as a bar; none where there is no frame
 * @param strip one sign a frame
 * @param otherSigns signs in it that are no cause
 * @param nightsTitle heading of the nights, empty when there is nothing to say
 * @param nights what happened in each night, in short
 * @param causes what softened the stars, most frequent first
 * @param uses how many frames serve which use; none where none was measured
 * @param usesRemark what the uses are counted against; at most one
 * @param advice what to do next time
 * @param best the best frames
 * @param remarks what could not be measured, and why, and remarks on the set
 * @param more where further remarks stand; at most one
 * @param noteTitle name of the notes field
 * @param noteHeightPx height of the notes field
 */
record GlanceView(
    String inputName,
    String when,
    String verdict,
    List<PictureView> grades,
    PictureView strip,
    List<Key> otherSigns,
    String nightsTitle,
    List<String> nights,
    List<CauseRow> causes,
    List<UseRow> uses,
    List<String> usesRemark,
    List<Numbered> advice,
    List<BestRow> best,
    List<String> remarks,
    List<GlanceRemarks.More> more,
    String noteTitle,
    long noteHeightPx) {

  /** A sign and what it means. */
  record Key(PictureView mark, String name) {}

  /**
   * @param share of the longest bar's length, in percent
   */
  record CauseRow(PictureView mark, String name, String count, long share) {}

  /**
   * @param share of the measured frames, in percent
   */
  record UseRow(String name, String count, long share) {}

  /** A numbered piece of advice; its reason may be empty. */
  record Numbered(int number, String action, String reason) {}

  /**
   * @param href where its entry stands, empty when it has none
   */
  record BestRow(PictureView mark, String file, String href, String figures) {}
}
