package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;

/**
 * The blur budget of a frame as one bar as long as its stars are wide, with a tick for each pixel,
 * divided by the shares of the second moment: the core first, then the largest cause. Each part has
 * its name and share below it, on a line of its own where they would overlap.
 *
 * @param parts core first
 * @param widePx how wide the stars are
 * @param label says so at the end of the bar
 * @param fullPx the width that fills the bar, the same for all frames of a scene; wider stars' bars
 *     are torn off
 * @param words names of the parts
 */
public record BudgetBar(
    List<BudgetPart> parts, double widePx, String label, double fullPx, PictureWords words)
    implements Picture {
  private static final double TICKS = 4;
  private static final double BAR_HIGH = 13;
  private static final double ROOM_FOR_WORDS = 84;
  private static final float FONT_SIZE = 9.4f;
  private static final double LINE_HIGH = 10.8;
  private static final double TORN = 16;

  public BudgetBar {
    parts = List.copyOf(parts);
    if (!(widePx > 0 && fullPx > 0)) {
      throw new IllegalArgumentException("widths must be > 0, were " + widePx + ", " + fullPx);
    }
  }

  /** The height that its labels need in a picture of this width. */
  public double heightFor(double width) {
    int lines = labels(width).stream().mapToInt(BudgetLabels.Label::line).max().orElse(0) + 1;
    return TICKS + BAR_HIGH + 3 + lines * LINE_HIGH;
  }

  private double length(double width) {
    return (width - ROOM_FOR_WORDS) * Math.min(1, widePx / fullPx);
  }

  private List<BudgetLabels.Label> labels(double width) {
    return BudgetLabels.placed(parts, length(width), ReportFonts.sans(FONT_SIZE), words);
  }

  @Override
  public void draw(Graphics2D graphics, double width, double height) {
    double length = length(width);
    drawTicks(graphics, length);
    double x = 0;
    for (BudgetPart part : parts) {
      Rectangle2D place = new Rectangle2D.Double(x, TICKS, length * part.share(), BAR_HIGH);
      part.filling().fill(graphics, place);
      x += length * part.share();
    }
    graphics.setColor(Palette.MUTED);
    graphics.setStroke(new BasicStroke(0.5f));
    graphics.draw(new Rectangle2D.Double(0, TICKS, length, BAR_HIGH));
    if (widePx > fullPx) {
      drawTear(graphics, length);
    }
    graphics.setFont(ReportFonts.bold(FONT_SIZE));
    graphics.setColor(Palette.INK);
    graphics.drawString(label, (float) (length + 5), (float) (TICKS + BAR_HIGH - 3));
    labels(width).forEach(one -> drawLabel(graphics, one));
  }

  private void drawTicks(Graphics2D graphics, double length) {
    graphics.setColor(Palette.MUTED);
    graphics.setStroke(new BasicStroke(0.5f));
    double shown = Math.min(widePx, fullPx);
    for (int px = 0; px <= shown && shown / length < 0.2; px++) {
      double x = px * length / shown;
      graphics.draw(new Line2D.Double(x, px % 5 == 0 ? 0 : 1.5, x, TICKS));
    }
  }

  /** Two white strokes across the bar: it is longer than drawn. */
  private static void drawTear(Graphics2D graphics, double length) {
    graphics.setColor(Palette.PAPER);
    graphics.setStroke(new BasicStroke(2f));
    for (int i = 0; i < 2; i++) {
      Path2D tear = new Path2D.Double();
      tear.moveTo(length - TORN + 5 * i, TICKS + BAR_HIGH + 1);
      tear.lineTo(length - TORN + 5 * i + 6, TICKS - 1);
      graphics.draw(tear);
    }
  }

  private static void drawLabel(Graphics2D graphics, BudgetLabels.Label label) {
    double baseline = TICKS + BAR_HIGH + 1 + (label.line() + 1) * LINE_HIGH - 2;
    graphics.setColor(Palette.MUTED);
    graphics.setStroke(new BasicStroke(0.5f));
    double bottom = baseline - (label.beside() ? 3.5 : FONT_SIZE - 1);
    graphics.draw(new Line2D.Double(label.leaderX(), TICKS + BAR_HIGH, label.leaderX(), bottom));
    if (label.beside()) {
      graphics.draw(new Line2D.Double(label.leaderX(), bottom, label.leaderX() + 3, bottom));
    }
    graphics.setFont(ReportFonts.sans(FONT_SIZE));
    graphics.setColor(Palette.INK);
    graphics.drawString(label.words(), (float) label.x(), (float) baseline);
  }
}
