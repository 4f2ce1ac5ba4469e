package rondure.report;

import java.util.List;

/**
 * The focus test series.
 *
 * @param series one for each
 */
record SeriesView(List<One> series) {

  /**
   * @param heading which frames
   * @param picture the curve, with a star under each point
   * @param caption what the picture shows
   * @param answer where best focus is
   * @param sentences how sure, which way, what to do
   */
  record One(
      String heading, PictureView picture, String caption, String answer, List<String> sentences) {}
}
