package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import rondure.blur.Cause;
import rondure.blur.Terms;

/**
 * The blur budget of a frame as one bar: the star's second moment, the core first, then what each
 * cause adds, the largest next to the core. The core is as long in every frame of a scene whose
 * stars grow to at most four times its area, so that bars can be compared.
 *
 * @param terms of the frame
 * @param words names of the parts
 */
public record BudgetBar(Terms terms, PictureWords words) implements Picture {
  private static final double CORE_SHARE = 0.25;
  private static final double BAR_HIGH = 11;
  private static final double LEAST_LABELLED = 16;
  private static final float FONT_SIZE = 8.5f;

  /** One part of the bar. */
  private record Part(String name, double px2, Color colour, boolean isCore) {}

  @Override
  public void draw(Graphics2D graphics, double width, double height) {
    List<Part> parts = parts();
    double whole = parts.stream().mapToDouble(Part::px2).sum();
    double unit = width / Math.max(whole, terms.corePx2() / CORE_SHARE);
    Font font = ReportFonts.sans(FONT_SIZE);
    graphics.setFont(font);
    graphics.setStroke(new BasicStroke(0.8f));
    double x = 0;
    double freeFrom = 0;
    for (Part part : parts) {
      double length = part.px2() * unit;
      graphics.setColor(part.colour());
      graphics.fill(new Rectangle2D.Double(x, 0, length, BAR_HIGH));
      graphics.setColor(Palette.PAPER);
      graphics.draw(new Line2D.Double(x + length, 0, x + length, BAR_HIGH));
      double wordsWide = graphics.getFontMetrics().stringWidth(part.name());
      if (length >= LEAST_LABELLED && x >= freeFrom && x + wordsWide <= width) {
        graphics.setColor(part.isCore() ? Palette.MUTED : part.colour());
        graphics.drawString(part.name(), (float) x, (float) (BAR_HIGH + FONT_SIZE + 1));
        freeFrom = x + wordsWide + 6;
      }
      x += length;
    }
  }

  private List<Part> parts() {
    List<Part> parts = new ArrayList<>();
    for (Cause cause : Cause.values()) {
      double px2 = terms.of(cause);
      if (cause != Cause.NONE && px2 > 0) {
        Mark mark = Mark.of(cause);
        parts.add(new Part(words.say("mark." + mark), px2, mark.colour(), false));
      }
    }
    parts.sort((one, two) -> Double.compare(two.px2(), one.px2()));
    parts.add(0, new Part(words.say("picture.core"), terms.corePx2(), Palette.HAIRLINE, true));
    return parts;
  }
}
