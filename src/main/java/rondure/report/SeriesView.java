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
   * @param answer where best focus is
   * @param sentences how sure, which way, what to do
   */
  record One(String heading, PictureView picture, String answer, List<String> sentences) {}
}
