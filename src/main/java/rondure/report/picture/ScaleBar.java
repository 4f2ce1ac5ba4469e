package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;

/** A bar of known length with its words beside it. */
final class ScaleBar {
  private static final int[] ROUND_LENGTHS_PX = {50, 20, 10, 5, 2, 1};

  private ScaleBar() {}

  /** The longest round length that is drawn at most {@code longest} units long. */
  static int lengthPx(double unitsPerPx, double longest) {
    for (int length : ROUND_LENGTHS_PX) {
      if (length * unitsPerPx <= longest) {
        return length;
      }
    }
    return 1;
  }

  static void draw(Graphics2D graphics, double x, double y, double length, String words) {
    graphics.setColor(Palette.MUTED);
    graphics.setStroke(new BasicStroke(1f));
    graphics.draw(new Line2D.Double(x, y, x + length, y));
    graphics.draw(new Line2D.Double(x, y - 2.5, x, y + 2.5));
    graphics.draw(new Line2D.Double(x + length, y - 2.5, x + length, y + 2.5));
    graphics.setFont(ReportFonts.sans(9));
    graphics.drawString(words, (float) (x + length + 5), (float) (y + 3));
  }
}
