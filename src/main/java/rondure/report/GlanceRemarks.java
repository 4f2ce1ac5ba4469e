package rondure.report;

import java.util.ArrayList;
import java.util.List;

/**
 * What could not be measured, and remarks on the set, as many as the page holds.
 *
 * @param lines as they stand on the page
 * @param more where those stand that do not fit; at most one
 */
record GlanceRemarks(List<String> lines, List<More> more) {
  /** The line that points on takes some room itself. */
  private static final double MORE_LINE = 21;

  /**
   * @param words how many more there are
   * @param href where
   */
  record More(String words, String href) {}

  /**
   * @param roomPx height that the lines may take
   */
  static GlanceRemarks of(ReportContext context, double roomPx) {
    List<String> problems = Problems.of(context);
    List<String> all = new ArrayList<>(problems);
    all.addAll(context.book().notes());
    int fitting = fitting(all, roomPx);
    if (fitting == all.size()) {
      return new GlanceRemarks(all, List.of());
    }
    fitting = fitting(all, roomPx - MORE_LINE);
    String href = fitting < problems.size() ? "#tables" : "#remarks";
    String words = context.words().count("glance.more", all.size() - fitting);
    return new GlanceRemarks(all.subList(0, fitting), List.of(new More(words, href)));
  }

  private static int fitting(List<String> all, double roomPx) {
    double left = roomPx;
    for (int i = 0; i < all.size(); i++) {
      left -= GlanceRoom.halfPointHeight(all.get(i));
      if (left < 0) {
        return i;
      }
    }
    return all.size();
  }

  double height() {
    return lines.stream().mapToDouble(GlanceRoom::halfPointHeight).sum() + MORE_LINE * more.size();
  }
}
