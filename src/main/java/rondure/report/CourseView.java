package rondure.report;

import java.util.List;

/**
 * The course of the night.
 *
 * @param charts one for each night with times, and one for frames without
 * @param events what happened, in time order, a sentence or two each
 * @param trails the trail the exposures can give, by scene
 */
record CourseView(List<Chart> charts, List<String> events, List<String> trails) {

  /** A chart under its heading. */
  record Chart(String heading, PictureView picture) {}
}
