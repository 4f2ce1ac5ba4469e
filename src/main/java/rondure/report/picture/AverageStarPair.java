package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import rondure.base.Orientation;
import rondure.blur.ExplainedStar;

/**
 * Average stars as seen, as the blur budget explains them, and what is left: a row for each zone of
 * the frame, all at one scale, in display orientation.
 *
 * @param zones from the centre outwards
 * @param orientation how the frame is shown
 * @param halfSidePx how far from the middle the pictures reach, frame pixels
 * @param words names of zones and columns
 */
public record AverageStarPair(
    List<ExplainedStar> zones, Orientation orientation, double halfSidePx, PictureWords words)
    implements Picture {
  private static final double GAP = 5;
  private static final double LABELS = 13;
  private static final double SCALE_STRIP = 14;
  private static final float FONT_SIZE = 9.4f;
  private static final List<String> COLUMNS = List.of("seen", "explained", "left");
  private static final int SCALE_STEPS = 9;
  private static final double STEP_WIDE = 3.4;

  public AverageStarPair {
    zones = List.copyOf(zones);
    if (!(halfSidePx > 0)) {
      throw new IllegalArgumentException("halfSidePx must be > 0, was " + halfSidePx);
    }
  }

  /** Height that {@code rows} need in a picture of this width. */
  public static double heightFor(double width, int rows) {
    double side = (width - 2 * GAP) / COLUMNS.size();
    return LABELS + rows * (side + GAP) - GAP + SCALE_STRIP;
  }

  @Override
  public void draw(Graphics2D graphics, double width, double height) {
    double side = (width - 2 * GAP) / COLUMNS.size();
    graphics.setFont(ReportFonts.sans(FONT_SIZE));
    graphics.setColor(Palette.MUTED);
    for (int column = 0; column < COLUMNS.size(); column++) {
      String words = this.words.say("picture.pair." + COLUMNS.get(column));
      graphics.drawString(words, (float) (column * (side + GAP)), FONT_SIZE);
    }
    for (int row = 0; row < zones.size(); row++) {
      drawZone(graphics, zones.get(row), LABELS + row * (side + GAP), side);
    }
    drawScales(graphics, side, LABELS + zones.size() * (side + GAP) - GAP);
  }

  private void drawZone(Graphics2D graphics, ExplainedStar zone, double top, double side) {
    Rectangle2D seen = new Rectangle2D.Double(0, top, side, side);
    Rectangle2D explained = new Rectangle2D.Double(side + GAP, top, side, side);
    Rectangle2D left = new Rectangle2D.Double(2 * (side + GAP), top, side, side);
    new StarPicture(zone.seen(), orientation, halfSidePx).draw(graphics, seen);
    new StarPicture(zone.explained(), orientation, halfSidePx).draw(graphics, explained);
    new StarPicture(zone.left(), orientation, halfSidePx).drawSigned(graphics, left);
    label(graphics, words.say("picture.zone." + zone.seen().zone()), seen);
    String share = String.format(Locale.ROOT, "%.1f", 100 * zone.leftShare());
    label(graphics, words.say("picture.pair.rms", Map.of("share", share)), left);
  }

  /** Dark words on a light field, in the lower left corner. */
  private static void label(Graphics2D graphics, String words, Rectangle2D square) {
    graphics.setFont(ReportFonts.sans(FONT_SIZE));
    double wide = graphics.getFontMetrics().stringWidth(words);
    graphics.setColor(Palette.PAPER);
    graphics.fill(new Rectangle2D.Double(square.getX(), square.getMaxY() - 11, wide + 5, 11));
    graphics.setColor(Palette.INK);
    graphics.drawString(words, (float) (square.getX() + 2), (float) (square.getMaxY() - 2));
  }

  /** Frame pixels on the left, light left over on the right. */
  private void drawScales(Graphics2D graphics, double side, double top) {
    double unitsPerPx = side / (2 * halfSidePx);
    int barPx = ScaleBar.lengthPx(unitsPerPx, 0.6 * side);
    String label = words.say("picture.starScale", Map.of("length", Integer.toString(barPx)));
    ScaleBar.draw(graphics, 0.5, top + 8, barPx * unitsPerPx, label);
    double end = 3 * side + 2 * GAP;
    String most = words.say("picture.pair.most", Map.of("percent", percent()));
    String least = words.say("picture.pair.least", Map.of("percent", percent()));
    graphics.setFont(ReportFonts.sans(FONT_SIZE));
    double mostWide = graphics.getFontMetrics().stringWidth(most);
    double leastWide = graphics.getFontMetrics().stringWidth(least);
    double from = end - mostWide - 3 - SCALE_STEPS * STEP_WIDE;
    graphics.setColor(Palette.MUTED);
    graphics.drawString(most, (float) (end - mostWide), (float) (top + 11.5));
    graphics.drawString(least, (float) (from - 3 - leastWide), (float) (top + 11.5));
    for (int step = 0; step < SCALE_STEPS; step++) {
      double share = (2.0 * step / (SCALE_STEPS - 1) - 1) * StarPicture.SCALE_END;
      graphics.setColor(StarPicture.signedTone(share));
      graphics.fill(new Rectangle2D.Double(from + step * STEP_WIDE, top + 5, STEP_WIDE, 6.5));
    }
    graphics.setColor(Palette.MUTED);
    graphics.setStroke(new BasicStroke(0.5f));
    graphics.draw(new Rectangle2D.Double(from, top + 5, SCALE_STEPS * STEP_WIDE, 6.5));
  }

  private static String percent() {
    return String.format(Locale.ROOT, "%.0f", 100 * StarPicture.SCALE_END);
  }
}
