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
   * @param room what is left of the page
   */
  static GlanceRemarks of(ReportContext context, GlanceRoom room) {
    double roomPx = room.left();
    List<String> all = new ArrayList<>(List.of(String.join(" ", Problems.of(context))));
    all.addAll(context.book().notes());
    int fitting = fitting(all, room, roomPx);
    if (fitting == all.size()) {
      return new GlanceRemarks(all, List.of());
    }
    fitting = fitting(all, room, roomPx - MORE_LINE);
    String href = fitting < 1 ? "#tables" : "#remarks";
    String words = context.words().count("glance.more", all.size() - fitting);
    return new GlanceRemarks(all.subList(0, fitting), List.of(new More(words, href)));
  }

  /** Room for what could not be measured, and for a line that points on. */
  static double least(ReportContext context, GlanceRoom room) {
    boolean hasNotes = !context.book().notes().isEmpty();
    return room.pointHeight(String.join(" ", Problems.of(context))) + (hasNotes ? MORE_LINE : 0);
  }

  private static int fitting(List<String> all, GlanceRoom room, double roomPx) {
    double left = roomPx;
    for (int i = 0; i < all.size(); i++) {
      left -= room.pointHeight(all.get(i));
      if (left < 0) {
        return i;
      }
    }
    return all.size();
  }

  double height(GlanceRoom room) {
    return lines.stream().mapToDouble(room::pointHeight).sum() + MORE_LINE * more.size();
  }
}
