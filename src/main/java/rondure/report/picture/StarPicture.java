package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import rondure.base.Orientation;
import rondure.stars.AverageStar;

/**
 * An average star drawn in steps of brightness, each step an outline filled with its tone.
 *
 * @param star the star
 * @param orientation how the frame is shown
 * @param halfSidePx how far from the middle the picture reaches, frame pixels
 */
record StarPicture(AverageStar star, Orientation orientation, double halfSidePx) {
  private static final double[] LEVELS = {0.04, 0.08, 0.15, 0.25, 0.4, 0.6, 0.8};

  /** Of light left over; the last is the end of the scale. */
  private static final double[] SIGNED = {0.02, 0.04, 0.06, 0.08, 0.1};

  static final double SCALE_END = SIGNED[SIGNED.length - 1];

  /** Draws the star, its half-maximum outline around it. */
  void draw(Graphics2D graphics, Rectangle2D square) {
    graphics.setColor(StarTones.of(0));
    graphics.fill(square);
    Shape before = graphics.getClip();
    graphics.clip(square);
    double[] values = ShownStamp.values(star.stamp(), orientation);
    for (double level : LEVELS) {
      fill(graphics, square, values, level, StarTones.of(1.2 * level));
    }
    graphics.setColor(Palette.STRETCHED);
    graphics.setStroke(new BasicStroke(1f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
    Path2D outline = HalfMaximumOutline.of(star.stamp(), star.samplesPerPx(), orientation);
    AffineTransform place =
        AffineTransform.getTranslateInstance(square.getCenterX(), square.getCenterY());
    double unitsPerPx = square.getWidth() / (2 * halfSidePx);
    place.scale(unitsPerPx, unitsPerPx);
    graphics.draw(place.createTransformedShape(outline));
    graphics.setClip(before);
  }

  /** Draws light left over: lighter where there is more, darker where there is less. */
  void drawSigned(Graphics2D graphics, Rectangle2D square) {
    graphics.setColor(signedTone(0));
    graphics.fill(square);
    Shape before = graphics.getClip();
    graphics.clip(square);
    double[] values = ShownStamp.values(star.stamp(), orientation);
    double[] turned = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      turned[i] = -values[i];
    }
    for (double level : SIGNED) {
      fill(graphics, square, values, level, signedTone(level));
      fill(graphics, square, turned, level, signedTone(-level));
    }
    graphics.setClip(before);
  }

  /** Tone of light left over, a share of the peak. */
  static Color signedTone(double share) {
    double part = Math.max(-1, Math.min(1, share / SCALE_END));
    Color end = part < 0 ? Palette.LESS_LIGHT : Palette.PAPER;
    return Palette.mixed(Palette.AS_EXPECTED, end, Math.abs(part));
  }

  private void fill(
      Graphics2D graphics, Rectangle2D square, double[] values, double level, Color colour) {
    int side = star.stamp().sidePx();
    double middle = (side - 1) / 2.0;
    double unit = square.getWidth() / (2 * halfSidePx * star.samplesPerPx());
    AffineTransform place =
        AffineTransform.getTranslateInstance(square.getCenterX(), square.getCenterY());
    place.scale(unit, unit);
    place.translate(-middle, -middle);
    graphics.setColor(colour);
    graphics.fill(place.createTransformedShape(Contour.of(values, side, level)));
  }
}
