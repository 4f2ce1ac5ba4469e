package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;

/**
 * Widths one below the other at one scale, narrowest first: each a bar with its name before it and
 * its number at its end.
 *
 * @param rungs in the order they stand
 */
public record WidthLadder(List<Rung> rungs) implements Picture {
  private static final double STEP = 21;
  private static final double NAMES = 96;
  private static final double NUMBERS = 80;
  private static final double THICK = 8;

  /**
   * One width.
   *
   * @param name what is so wide
   * @param widthPx how wide
   * @param number as it is printed
   * @param measured whether stars showed it; else it is worked out
   */
  public record Rung(String name, double widthPx, String number, boolean measured) {}

  public WidthLadder {
    rungs = List.copyOf(rungs);
  }

  /** Height it needs. */
  public long heightPx() {
    return Math.round(rungs.size() * STEP + 2);
  }

  @Override
  public void draw(Graphics2D graphics, double width, double height) {
    double widest = rungs.stream().mapToDouble(Rung::widthPx).max().orElse(1);
    double perPx = (width - NAMES - NUMBERS) / widest;
    for (int i = 0; i < rungs.size(); i++) {
      drawRung(graphics, rungs.get(i), i * STEP + STEP / 2, perPx);
    }
    graphics.setColor(Palette.MUTED);
    graphics.setStroke(new BasicStroke(0.6f));
    graphics.draw(new Line2D.Double(NAMES, 1, NAMES, rungs.size() * STEP));
  }

  private static void drawRung(Graphics2D graphics, Rung rung, double y, double perPx) {
    graphics.setFont(ReportFonts.sans(10));
    graphics.setColor(Palette.INK);
    float base = (float) (y + 3.5);
    double nameWide = graphics.getFontMetrics().stringWidth(rung.name());
    graphics.drawString(rung.name(), (float) (NAMES - 6 - nameWide), base);
    double length = rung.widthPx() * perPx;
    Rectangle2D bar = new Rectangle2D.Double(NAMES, y - THICK / 2, length, THICK);
    Color colour = rung.measured() ? Palette.SHARP : Palette.GROUND;
    graphics.setColor(colour);
    graphics.fill(bar);
    graphics.setColor(rung.measured() ? Palette.SHARP : Palette.MUTED);
    graphics.setStroke(new BasicStroke(0.6f));
    graphics.draw(bar);
    graphics.setColor(Palette.INK);
    graphics.drawString(rung.number(), (float) (NAMES + length + 6), base);
  }
}
