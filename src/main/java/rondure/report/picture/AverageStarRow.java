package rondure.report.picture;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Map;
import rondure.base.Orientation;
import rondure.stars.AverageStar;

/**
 * The average star from centre to edge in one row, all at one scale, in display orientation, with
 * its half-maximum outline.
 *
 * @param averages in the order they stand
 * @param orientation how the frame is shown
 * @param halfSidePx how far from the middle the pictures reach, frame pixels
 * @param words names of the zones
 */
public record AverageStarRow(
    List<AverageStar> averages, Orientation orientation, double halfSidePx, PictureWords words)
    implements Picture {
  private static final double GAP = 8;
  private static final double LABELS = 14;
  private static final double SCALE_STRIP = 12;

  public AverageStarRow {
    averages = List.copyOf(averages);
    if (!(halfSidePx > 0)) {
      throw new IllegalArgumentException("halfSidePx must be > 0, was " + halfSidePx);
    }
  }

  @Override
  public void draw(Graphics2D graphics, double width, double height) {
    double side =
        Math.min(height - LABELS - SCALE_STRIP, (width + GAP) / Math.max(3, averages.size()) - GAP);
    for (int i = 0; i < averages.size(); i++) {
      drawStar(graphics, averages.get(i), i * (side + GAP), side);
    }
    drawScale(graphics, side);
  }

  private void drawStar(Graphics2D graphics, AverageStar average, double left, double side) {
    graphics.setColor(Palette.MUTED);
    graphics.setFont(ReportFonts.sans(9));
    graphics.drawString(words.say("picture.zone." + average.zone()), (float) left, 9f);
    new StarPicture(average, orientation, halfSidePx)
        .draw(graphics, new Rectangle2D.Double(left, LABELS, side, side));
  }

  private void drawScale(Graphics2D graphics, double side) {
    double unitsPerPx = side / (2 * halfSidePx);
    int barPx = ScaleBar.lengthPx(unitsPerPx, 0.6 * side);
    String label = words.say("picture.starScale", Map.of("length", Integer.toString(barPx)));
    ScaleBar.draw(graphics, 0.5, LABELS + side + 7, barPx * unitsPerPx, label);
  }
}
