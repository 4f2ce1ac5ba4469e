package rondure.report.picture;

import java.util.List;

/**
 * Where the signs of a strip stand: how far apart, how many a line, and what room is left for times
 * and names. Of the sizes the largest that fits.
 *
 * @param pitch from sign to sign, CSS pixels
 * @param perLine signs on a line
 * @param isDense signs too close for words between the lines: times stand at the head of the lines
 */
record StripLayout(double pitch, int perLine, boolean isDense) {
  static final float FONT_SIZE = 9.5f;
  static final double RUN_GAP = 9;
  private static final double LARGEST = 38;
  private static final double COMFORTABLE = 15;
  private static final double LEAST = 3;
  private static final double DENSE_BELOW = 9;
  private static final double HEAD_WIDTH = 34;
  private static final double KEEP_SHARE = 0.34;
  private static final double TIME_ROOM = 12;
  private static final double NAME_ROOM = 15;
  private static final double DENSE_GAP_SHARE = 0.16;

  /**
   * Lines of about the same length: so few that signs are small but clear, fewer where the height
   * does not hold them.
   *
   * @param width and height at most to be filled
   */
  static StripLayout fit(List<NightStrip.Run> runs, double width, double height) {
    int longest = runs.stream().mapToInt(run -> run.items().size()).max().orElse(1);
    int lines = 1;
    while (pitch(longest, lines, width) < COMFORTABLE) {
      lines++;
    }
    while (lines > 1 && at(longest, lines, width).height(runs) > height) {
      lines--;
    }
    return at(longest, lines, width);
  }

  private static double pitch(int longest, int lines, double width) {
    int perLine = Math.max(1, (longest + lines - 1) / lines);
    double pitch = Math.min(LARGEST, width / perLine);
    return pitch < DENSE_BELOW ? Math.max(LEAST, (width - HEAD_WIDTH) / perLine) : pitch;
  }

  private static StripLayout at(int longest, int lines, double width) {
    double pitch = pitch(longest, lines, width);
    boolean dense = pitch < DENSE_BELOW;
    double room = width - (dense ? HEAD_WIDTH : 0);
    return new StripLayout(pitch, Math.max(1, (int) (room / pitch + 1e-6)), dense);
  }

  double left() {
    return isDense ? HEAD_WIDTH : 0;
  }

  int lines(NightStrip.Run run) {
    return (run.items().size() + perLine - 1) / perLine;
  }

  /** Room for the names of events above a line. */
  double nameRoom(NightStrip.Run run) {
    return isDense || run.spans().isEmpty() ? 0 : NAME_ROOM;
  }

  /** From a line's top to the next one's. */
  double lineHeight(NightStrip.Run run) {
    double sign = pitch * (1 + KEEP_SHARE);
    return isDense ? sign + pitch * DENSE_GAP_SHARE : nameRoom(run) + sign + TIME_ROOM;
  }

  /** Where lines are closer than words are high, only each so many has its time. */
  int linesPerTime(NightStrip.Run run) {
    return (int) Math.ceil((FONT_SIZE + 1) / lineHeight(run));
  }

  double height(List<NightStrip.Run> runs) {
    double lines = runs.stream().mapToDouble(run -> lines(run) * lineHeight(run)).sum();
    return lines + Math.max(0, runs.size() - 1) * RUN_GAP + 2;
  }

  /** Middle of the sign at a place in its run. */
  double x(int place) {
    return left() + (place % perLine + 0.5) * pitch;
  }
}
