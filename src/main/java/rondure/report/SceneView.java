package rondure.report;

import java.util.List;

/**
 * A scene: its frames best first.
 *
 * @param id anchor on the page
 * @param title for heading and bookmark
 * @param facts camera, focal length, counts
 * @param sky sentences on what the stars told about aim and lens
 * @param entries filled entries, XHTML
 * @param bookmarks one for each entry
 * @param rows the measured frames without an entry
 */
record SceneView(
    String id,
    String title,
    String facts,
    List<String> sky,
    List<String> entries,
    List<PageView.Bookmark> bookmarks,
    List<FrameRow> rows) {

  /** A frame as a table row. */
  record FrameRow(
      PictureView mark,
      String file,
      String cause,
      String width,
      String roundness,
      String trail,
      String time,
      String grade) {}
}
