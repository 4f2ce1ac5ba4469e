package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import rondure.base.Orientation;
import rondure.base.RobustStats;
import rondure.stars.Star;
import rondure.stars.StarField;

/**
 * The stars of a frame as enlarged ellipses at their places, in display orientation.
 *
 * @param field stars in stored coordinates
 * @param orientation how the frame is shown
 * @param referenceFwhmPx the width that is drawn {@value #REFERENCE_DRAWN} units wide: the scene's
 *     sharpest, so that frames of a scene compare at sight
 * @param words for the scale
 */
public record EllipseMap(
    StarField field, Orientation orientation, double referenceFwhmPx, PictureWords words)
    implements Picture {
  private static final double REFERENCE_DRAWN = 7.5;
  private static final double LONGEST_DRAWN = 44;

  /** Scale below the frame. */
  public static final double SCALE_STRIP = 13;

  /** Room around the frame for the ellipses of stars at its border. */
  public static final double MARGIN = 11;

  private static final int ELLIPSES_MAX = 160;

  /** Stars less round than this are drawn as stretched. */
  public static final double STRETCHED_BELOW = 0.8;

  public EllipseMap {
    if (!(referenceFwhmPx > 0)) {
      throw new IllegalArgumentException("referenceFwhmPx must be > 0, was " + referenceFwhmPx);
    }
  }

  @Override
  public void draw(Graphics2D graphics, double width, double height) {
    DisplayFrame frame =
        DisplayFrame.fit(field, orientation, width - 2 * MARGIN, height - SCALE_STRIP - 2 * MARGIN);
    AffineTransform before = graphics.getTransform();
    graphics.translate(MARGIN, MARGIN);
    graphics.setColor(Palette.GROUND);
    graphics.fill(frame.ground(field.mask()));
    graphics.setColor(Palette.HAIRLINE);
    graphics.setStroke(new BasicStroke(0.6f));
    graphics.draw(new Rectangle2D.Double(0, 0, frame.width(), frame.height()));
    double enlargement = enlargement();
    for (Star star : spread(frame, enlargement)) {
      drawStar(graphics, frame, star, enlargement);
    }
    drawScale(graphics, frame, enlargement);
    graphics.setTransform(before);
  }

  /** Brightest first, leaving out those too close to one already taken to be read. */
  private List<Star> spread(DisplayFrame frame, double enlargement) {
    List<Star> taken = new ArrayList<>();
    for (Star star : field.stars()) {
      double x = frame.x(star.xPx(), star.yPx());
      double y = frame.y(star.xPx(), star.yPx());
      double apart = Math.max(0.9 * REFERENCE_DRAWN, 0.8 * star.fwhmMajorPx() * enlargement);
      boolean free =
          taken.stream()
              .noneMatch(
                  other ->
                      Math.hypot(
                              frame.x(other.xPx(), other.yPx()) - x,
                              frame.y(other.xPx(), other.yPx()) - y)
                          < apart);
      if (free && taken.size() < ELLIPSES_MAX) {
        taken.add(star);
      }
    }
    return taken;
  }

  /** Drawing units per pixel of star width; less when the longest would cover the map. */
  private double enlargement() {
    double[] longAxes = field.stars().stream().mapToDouble(Star::fwhmMajorPx).toArray();
    double longest = RobustStats.percentile(0.9, longAxes);
    double enlargement = REFERENCE_DRAWN / referenceFwhmPx;
    return longest > 0 ? Math.min(enlargement, LONGEST_DRAWN / longest) : enlargement;
  }

  private void drawStar(Graphics2D graphics, DisplayFrame frame, Star star, double enlargement) {
    double major = star.fwhmMajorPx() * enlargement;
    double minor = star.fwhmMinorPx() * enlargement;
    boolean stretched = star.fwhmMinorPx() < STRETCHED_BELOW * star.fwhmMajorPx();
    AffineTransform place =
        AffineTransform.getTranslateInstance(
            frame.x(star.xPx(), star.yPx()), frame.y(star.xPx(), star.yPx()));
    place.rotate(orientation.display(star.moments()).positionAngleRad());
    Color colour = stretched ? Palette.STRETCHED : Palette.SHARP;
    graphics.setColor(colour);
    graphics.setStroke(new BasicStroke(0.8f));
    graphics.draw(
        place.createTransformedShape(new Ellipse2D.Double(-major / 2, -minor / 2, major, minor)));
    if (stretched) {
      graphics.draw(place.createTransformedShape(new Line2D.Double(-major / 2, 0, major / 2, 0)));
    }
  }

  private void drawScale(Graphics2D graphics, DisplayFrame frame, double enlargement) {
    int barPx = ScaleBar.lengthPx(enlargement, 45);
    ScaleBar.draw(
        graphics,
        0,
        frame.height() + MARGIN + 5,
        barPx * enlargement,
        words.say(
            "picture.ellipseScale",
            Map.of(
                "length",
                Integer.toString(barPx),
                "times",
                String.format(Locale.ROOT, "%.0f", enlargement / frame.scale()))));
  }
}
