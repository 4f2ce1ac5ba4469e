package rondure.report;

import java.util.List;
import java.util.Optional;

/**
 * The course of the night.
 *
 * @param charts one for each night with times, and one for frames without
 * @param events what happened, in time order, a sentence or two each
 * @param exposure how long one may expose; empty where no scene tells
 * @param trails the trail the exposures can give, of the other scenes
 * @param bare whether nothing but these trails is there
 */
record CourseView(
    List<Chart> charts,
    List<String> events,
    Optional<Exposure> exposure,
    List<String> trails,
    boolean bare) {

  /**
   * A chart under its heading.
   *
   * @param remarks what the chart cannot show, under it
   */
  record Chart(String heading, PictureView picture, List<String> remarks) {}

  /**
   * How long one may expose.
   *
   * @param tables how far stars trail by exposure and aim, of each of the largest scenes
   * @param chart of the scene with most frames
   * @param ownPage whether the page before it is full
   */
  record Exposure(List<TrailTable> tables, Optional<TrailPicture> chart, boolean ownPage) {}

  /** A table's chart under its heading. */
  record TrailPicture(String heading, PictureView picture) {}

  /**
   * One scene's trails.
   *
   * @param scene its name
   * @param meaning what the cells say
   * @param aims headings of the columns
   * @param rows exposures, and last the exposure at which the trail is as long as a star is wide
   * @param sentences rules of thumb beside it
   */
  record TrailTable(
      String scene,
      String meaning,
      List<String> aims,
      List<TrailRow> rows,
      List<String> sentences) {}

  /** A row: its exposure and a cell for each aim. */
  record TrailRow(String exposure, List<String> cells) {}
}
