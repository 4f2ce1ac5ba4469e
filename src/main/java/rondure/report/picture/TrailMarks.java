package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Exposures marked on the axis of a chart of trails: a tick above it, and a line down to a name in
 * a lane under its numbers. Names stand to the right of their lines; the farther left one lies, the
 * deeper it may stand, so that no line runs through another's name. Where the room ends they stand
 * without a line.
 *
 * @param marks from right to left
 */
record TrailMarks(List<Mark> marks) {
  private static final double LANE_HIGH = 15;
  private static final int LANES = 8;
  private static final double TICK = 8;
  private static final double GAP = 4;
  private static final double APART = 9;
  private static final double DESCENT = 2.6;

  /**
   * @param words its name
   * @param x of its line, from the left end of the axis
   * @param lane 0 = next to the numbers
   * @param from left end of the words
   * @param to right end
   * @param isLined whether its line reaches its words; else it ends above all of them
   */
  record Mark(String words, double x, int lane, double from, double to, boolean isLined) {
    private boolean meets(Mark other) {
      boolean touches = lane == other.lane && from < other.to + APART && other.from < to + APART;
      return touches || strikes(other) || other.strikes(this);
    }

    private boolean strikes(Mark other) {
      return isLined && lane > other.lane && x > other.from - GAP && x < other.to + GAP;
    }
  }

  /**
   * @param wide the axis
   * @param reach how far names may go
   * @param mostSeconds at the right end of the axis
   */
  static TrailMarks of(
      List<TrailChart.Exposure> exposures, double wide, double reach, double mostSeconds) {
    List<Mark> placed = new ArrayList<>();
    exposures.stream()
        .sorted(Comparator.comparing((TrailChart.Exposure e) -> -e.seconds()))
        .forEach(
            exposure -> {
              double x = Math.min(1, exposure.seconds() / mostSeconds) * wide;
              boolean isShown = exposure.seconds() <= mostSeconds;
              String words = isShown ? exposure.words() : exposure.farther();
              place(words, x, reach, placed);
            });
    return new TrailMarks(placed);
  }

  private static void place(String words, double x, double reach, List<Mark> placed) {
    double wide = TextMeasure.width(ReportFonts.sans(CourseChart.FONT_SIZE), words);
    double from = Math.min(x + GAP, reach - wide);
    boolean fits = from > x;
    for (int i = fits ? 0 : LANES; i < 2 * LANES; i++) {
      Mark mark = new Mark(words, x, i % LANES, from, from + wide, i < LANES);
      if (placed.stream().noneMatch(mark::meets)) {
        placed.add(mark);
        return;
      }
    }
  }

  /** What the names take under the numbers. */
  double height() {
    return marks.stream().mapToInt(mark -> mark.lane() + 1).max().orElse(0) * LANE_HIGH + 2;
  }

  /** Whether a line runs through words about a place on the axis. */
  boolean runsThrough(double middle, double wide) {
    return marks.stream().anyMatch(mark -> Math.abs(mark.x() - middle) < wide / 2 + 2);
  }

  void draw(Graphics2D graphics, Rectangle2D area) {
    graphics.setFont(ReportFonts.sans(CourseChart.FONT_SIZE));
    double top = area.getMaxY() + TrailPlot.AXIS_ROOM;
    for (Mark mark : marks) {
      double x = area.getMinX() + mark.x();
      double bottom = top + (mark.lane() + 1) * LANE_HIGH;
      double end = mark.isLined() ? bottom - 1 : top + 1;
      graphics.setColor(Palette.MUTED);
      graphics.setStroke(new BasicStroke(0.6f));
      graphics.draw(new Line2D.Double(x, area.getMaxY(), x, end));
      graphics.setColor(Palette.INK);
      graphics.setStroke(new BasicStroke(1.6f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER));
      graphics.draw(new Line2D.Double(x, area.getMaxY() - TICK, x, area.getMaxY()));
      graphics.drawString(
          mark.words(), (float) (area.getMinX() + mark.from()), (float) (bottom - 1 - DESCENT));
    }
  }
}
