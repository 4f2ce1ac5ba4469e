package rondure.report;

import java.util.List;

/**
 * A scene: its frames best first.
 *
 * @param id anchor on the page
 * @param title for heading and bookmark
 * @param facts camera, focal length, counts
 * @param sky sentences on what the stars told about aim and lens
 * @param index the frames with an entry
 * @param first whether it is the report's first scene
 * @param guide whether how to read the pictures is told here
 * @param entries filled entries, XHTML
 * @param bookmarks one for each entry
 * @param rowsTitle heading of the table
 * @param rows the measured frames without an entry; where there are none, those with one, if they
 *     fill the half page that is left
 */
record SceneView(
    String id,
    String title,
    String facts,
    List<String> sky,
    List<IndexItem> index,
    boolean first,
    boolean guide,
    List<String> entries,
    List<PageView.Bookmark> bookmarks,
    String rowsTitle,
    List<FrameRow> rows) {

  /** A link to an entry. */
  record IndexItem(PictureView mark, String file, String href, String title, String grade) {}

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
