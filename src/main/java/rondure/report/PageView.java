package rondure.report;

import java.util.List;

/**
 * The whole document: what page.html is filled with. The parts are filled templates.
 *
 * @param title of the document
 * @param paper CSS page size
 * @param inputName the folder's name
 * @param version of the program
 * @param bookmarks after the first page, in order
 */
record PageView(
    String title,
    String paper,
    String inputName,
    String version,
    List<Bookmark> bookmarks,
    String glance,
    String course,
    String lens,
    String scenes,
    String series,
    String tables,
    String method) {

  /** A line of the viewer's outline, with those under it. */
  record Bookmark(String name, String href, List<Bookmark> under) {}
}
