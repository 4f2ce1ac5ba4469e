package rondure.report;

import java.util.List;

/**
 * The course of the night.
 *
 * @param charts one for each night with times, and one for frames without
 * @param events what happened, in time order, a sentence or two each
 * @param tables how far stars trail by exposure and aim
 * @param trails the trail the exposures can give, of the other scenes
 */
record CourseView(
    List<Chart> charts, List<String> events, List<TrailTable> tables, List<String> trails) {

  /**
   * A chart under its heading.
   *
   * @param remarks what the chart cannot show, under it
   */
  record Chart(String heading, PictureView picture, List<String> remarks) {}

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
