package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import rondure.blur.Cause;

/** How a part of a bar is filled: each cause by colour and by pattern, so that grey will do. */
enum Filling {
  /** Light and plain. */
  CORE(Palette.HAIRLINE),
  /** Rings. */
  FOCUS(Palette.FOCUS),
  /** Rising strokes. */
  TRAILING(Palette.STRETCHED),
  /** Dark and plain. */
  TRIPOD(Palette.TRIPOD),
  /** Upright strokes. */
  LENS(Palette.LENS),
  /** Level strokes. */
  HAZE(Palette.HAZE),
  /** Nothing. */
  OPEN(Palette.PAPER);

  private static final double PITCH = 5;
  private final Color colour;

  Filling(Color colour) {
    this.colour = colour;
  }

  static Filling of(Cause cause) {
    return cause == Cause.NONE ? CORE : valueOf(cause.name());
  }

  void fill(Graphics2D graphics, Rectangle2D place) {
    graphics.setColor(colour);
    graphics.fill(place);
    Shape before = graphics.getClip();
    graphics.clip(place);
    graphics.setColor(Palette.PAPER);
    graphics.setStroke(new BasicStroke(1f));
    for (double x = place.getX() - place.getHeight(); x < place.getMaxX(); x += PITCH) {
      drawAt(graphics, x, place);
    }
    graphics.setStroke(new BasicStroke(0.8f));
    graphics.draw(
        new Line2D.Double(place.getMaxX(), place.getY(), place.getMaxX(), place.getMaxY()));
    graphics.setClip(before);
  }

  private void drawAt(Graphics2D graphics, double x, Rectangle2D place) {
    double top = place.getY();
    double high = place.getHeight();
    switch (this) {
      case TRAILING -> graphics.draw(new Line2D.Double(x, top + high, x + high, top));
      case LENS -> graphics.draw(new Line2D.Double(x + 3, top, x + 3, top + high));
      case FOCUS -> {
        graphics.draw(new Ellipse2D.Double(x, top + 2, 3, 3));
        graphics.draw(new Ellipse2D.Double(x + PITCH / 2, top + 7.5, 3, 3));
      }
      case HAZE -> {
        graphics.draw(new Line2D.Double(x, top + high / 3, x + PITCH, top + high / 3));
        graphics.draw(new Line2D.Double(x, top + 2 * high / 3, x + PITCH, top + 2 * high / 3));
      }
      default -> {}
    }
  }
}
