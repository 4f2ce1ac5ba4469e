package rondure.report.picture;

import java.awt.Font;
import java.awt.font.FontRenderContext;

/**
 * How wide words are when they are drawn; the same on every machine, by the program's own fonts.
 */
public final class TextMeasure {
  private static final FontRenderContext EXACT = new FontRenderContext(null, true, true);

  private TextMeasure() {}

  /** Width of one line, CSS pixels where the font's size is in CSS pixels. */
  public static double width(Font font, String words) {
    return words.isEmpty() ? 0 : font.getStringBounds(words, EXACT).getWidth();
  }

  /**
   * Lines that words take when they are broken at blanks only; a word wider than the line takes as
   * many as it fills.
   *
   * @param width of a line, CSS pixels
   */
  public static int lines(Font font, String words, double width) {
    double blank = width(font, "n n") - width(font, "nn");
    double used = 0;
    int lines = 1;
    for (String word : words.strip().split("\\s+")) {
      double wide = width(font, word);
      if (used > 0 && used + blank + wide > width) {
        lines++;
        used = 0;
      }
      lines += (int) (wide / width);
      used += (used > 0 ? blank : 0) + wide % width;
    }
    return lines;
  }
}
