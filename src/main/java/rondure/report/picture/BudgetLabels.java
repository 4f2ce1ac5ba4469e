package rondure.report.picture;

import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Where the names of a bar's parts stand below it. */
final class BudgetLabels {
  private static final double GAP = 9;
  private static final double BESIDE = 4;
  private static final FontRenderContext UNSCALED = new FontRenderContext(null, true, true);

  private BudgetLabels() {}

  /**
   * A name and its share.
   *
   * @param words what it says
   * @param leaderX the line from the bar down to it
   * @param x where the words begin
   * @param line counted down from the bar
   * @param beside whether the words stand beside the line's end, and not below it
   */
  record Label(String words, double leaderX, double x, int line, boolean beside) {}

  /**
   * From the right to the left, each on the first line where it meets neither words nor leaders of
   * those to its right; so leaders never cross words.
   */
  static List<Label> placed(List<BudgetPart> parts, double length, Font font, PictureWords words) {
    List<Label> placed = new ArrayList<>();
    double end = length;
    for (int i = parts.size() - 1; i >= 0; i--) {
      BudgetPart part = parts.get(i);
      double start = end - length * part.share();
      String text = text(part, words);
      double wide = font.getStringBounds(text, UNSCALED).getWidth();
      boolean beside = end - start < wide;
      double leader = i == 0 ? Math.min(8, (end - start) / 2) : (start + end) / 2;
      double x = i == 0 ? 0 : beside ? leader + BESIDE : leader - Math.min(wide / 2, 8);
      placed.add(new Label(text, leader, x, line(placed, x + wide + GAP), i > 0 && beside));
      end = start;
    }
    return placed;
  }

  private static int line(List<Label> placed, double end) {
    for (int line = 0; line < placed.size(); line++) {
      int tried = line;
      boolean free =
          placed.stream()
              .filter(other -> other.line() >= tried)
              .allMatch(other -> (other.line() == tried ? other.x() : other.leaderX()) >= end);
      if (free) {
        return line;
      }
    }
    return placed.size();
  }

  private static String text(BudgetPart part, PictureWords words) {
    double percent = 100 * part.share();
    String share = String.format(Locale.ROOT, percent < 0.95 ? "%.1f" : "%.0f", percent);
    return words.say(
        "picture.budget.part", Map.of("name", words.say(part.key()), "percent", share));
  }
}
