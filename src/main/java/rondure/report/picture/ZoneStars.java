package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rondure.base.Orientation;
import rondure.stars.AverageStar;

/**
 * A lens's average star from centre to edge in one row, at one scale, in display orientation, with
 * its half-maximum outline and its numbers under each.
 *
 * @param stars in the order they stand
 * @param orientation how the frame is shown
 * @param halfSidePx how far from the middle the pictures reach, frame pixels
 * @param words for the scale
 */
public record ZoneStars(
    List<ZoneStar> stars, Orientation orientation, double halfSidePx, PictureWords words)
    implements Picture {
  private static final double GAP = 12;
  private static final double NAME = 14;
  private static final double LINE = 12;
  private static final double LINES = 27;
  private static final double SCALE_STRIP = 14;
  private static final int PICTURE_SIDE = 168;

  /**
   * One part of the frame.
   *
   * @param name of the part
   * @param average its star, where there are enough
   * @param lines what stands under it
   */
  public record ZoneStar(String name, Optional<AverageStar> average, List<String> lines) {}

  public ZoneStars {
    stars = List.copyOf(stars);
    if (!(halfSidePx > 0)) {
      throw new IllegalArgumentException("halfSidePx must be > 0, was " + halfSidePx);
    }
  }

  @Override
  public void draw(Graphics2D graphics, double width, double height) {
    double wide = (width + GAP) / Math.max(3, stars.size()) - GAP;
    double side = Math.min(height - NAME - LINES - SCALE_STRIP, wide);
    for (int i = 0; i < stars.size(); i++) {
      drawStar(graphics, stars.get(i), i * (wide + GAP), side);
    }
    double unitsPerPx = side / (2 * halfSidePx);
    int barPx = ScaleBar.lengthPx(unitsPerPx, 0.6 * side);
    String label = words.say("picture.starScale", Map.of("length", Integer.toString(barPx)));
    ScaleBar.draw(graphics, 0.5, NAME + side + LINES + 8, barPx * unitsPerPx, label);
  }

  private void drawStar(Graphics2D graphics, ZoneStar zone, double left, double side) {
    graphics.setColor(Palette.INK);
    graphics.setFont(ReportFonts.bold(10));
    graphics.drawString(zone.name(), (float) left, 9f);
    if (zone.average().isPresent()) {
      drawTones(graphics, zone.average().get(), left, side);
    } else {
      graphics.setColor(Palette.HAIRLINE);
      graphics.setStroke(new BasicStroke(0.6f));
      graphics.draw(new Rectangle2D.Double(left + 0.5, NAME + 0.5, side - 1, side - 1));
    }
    graphics.setColor(Palette.INK);
    graphics.setFont(ReportFonts.sans(10));
    for (int i = 0; i < zone.lines().size(); i++) {
      graphics.drawString(
          zone.lines().get(i), (float) left, (float) (NAME + side + LINE * (i + 1)));
    }
  }

  private void drawTones(Graphics2D graphics, AverageStar average, double left, double side) {
    graphics.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_NEAREST_NEIGHBOR);
    BufferedImage image = StarTones.image(average, orientation, halfSidePx, PICTURE_SIDE);
    AffineTransform place = AffineTransform.getTranslateInstance(left, NAME);
    place.scale(side / image.getWidth(), side / image.getHeight());
    graphics.drawImage(image, place, null);
    AffineTransform about = AffineTransform.getTranslateInstance(left + side / 2, NAME + side / 2);
    about.scale(side / (2 * halfSidePx), side / (2 * halfSidePx));
    graphics.setColor(Palette.STRETCHED);
    graphics.setStroke(new BasicStroke(1f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
    graphics.draw(
        about.createTransformedShape(
            HalfMaximumOutline.of(average.stamp(), average.samplesPerPx(), orientation)));
  }
}
