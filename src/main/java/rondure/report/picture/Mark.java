package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Area;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import rondure.blur.Cause;
import rondure.blur.Verdict;
import rondure.night.FrameStatus;
import rondure.night.NightFrame;

/**
 * The sign of a frame, the same on every page: each draws what its cause does to a star, or what
 * made it.
 */
public enum Mark {
  /** A point. */
  NONE(Palette.SHARP, new Ellipse2D.Double(-0.34, -0.34, 0.68, 0.68)),
  /** A star out of focus is a ring. */
  FOCUS(Palette.FOCUS, stroked(new Ellipse2D.Double(-0.36, -0.36, 0.72, 0.72), 0.16)),
  /** A star drawn to a line. */
  TRAILING(Palette.STRETCHED, stroked(new Line2D.Double(-0.32, 0.3, 0.32, -0.3), 0.26)),
  /** Three legs. */
  TRIPOD(Palette.TRIPOD, tripod()),
  /** A star with a tail, as in a corner. */
  LENS(Palette.LENS, comet()),
  /** Veils. */
  HAZE(Palette.HAZE, veils()),
  /** An open question. */
  UNDECIDED(Palette.UNDECIDED, stroked(diamond(), 0.12)),
  /** A cross. */
  NOT_MEASURABLE(Palette.ABSENT, cross()),
  /** A gap. */
  LEFT_OUT(Palette.ABSENT, new Rectangle2D.Double(-0.3, -0.05, 0.6, 0.1));

  private final Color colour;
  private final Shape unitShape;

  Mark(Color colour, Shape unitShape) {
    this.colour = colour;
    this.unitShape = unitShape;
  }

  /** The sign of a frame. */
  public static Mark of(NightFrame frame) {
    if (frame.status() == FrameStatus.MEASURED) {
      return frame.verdict().flatMap(Verdict::cause).map(Mark::of).orElse(UNDECIDED);
    }
    boolean counts =
        frame.status() == FrameStatus.TOO_FEW_STARS || frame.status() == FrameStatus.UNREADABLE;
    return counts ? NOT_MEASURABLE : LEFT_OUT;
  }

  /** The sign of a cause. */
  public static Mark of(Cause cause) {
    return switch (cause) {
      case NONE -> NONE;
      case FOCUS -> FOCUS;
      case TRAILING -> TRAILING;
      case TRIPOD -> TRIPOD;
      case LENS -> LENS;
      case HAZE -> HAZE;
    };
  }

  public Color colour() {
    return colour;
  }

  /** The filled outline about (x, y), {@code size} wide. */
  public Shape shape(double x, double y, double size) {
    AffineTransform place = AffineTransform.getTranslateInstance(x, y);
    place.scale(size, size);
    return place.createTransformedShape(unitShape);
  }

  /** Draws the sign about (x, y), {@code size} wide. */
  public void draw(Graphics2D graphics, double x, double y, double size) {
    graphics.setColor(colour);
    graphics.fill(shape(x, y, size));
  }

  /** The sign alone, filling its square. */
  public Picture picture() {
    return (graphics, width, height) ->
        draw(graphics, width / 2, height / 2, Math.min(width, height));
  }

  private static Shape stroked(Shape line, double width) {
    return new BasicStroke((float) width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND)
        .createStrokedShape(line);
  }

  private static Shape tripod() {
    Path2D legs = new Path2D.Double();
    legs.moveTo(-0.34, 0.38);
    legs.lineTo(0, -0.36);
    legs.lineTo(0.34, 0.38);
    legs.moveTo(0, -0.36);
    legs.lineTo(0, 0.38);
    return stroked(legs, 0.15);
  }

  private static Shape comet() {
    Area comet = new Area(new Ellipse2D.Double(-0.42, 0, 0.42, 0.42));
    Path2D tail = new Path2D.Double();
    tail.moveTo(-0.36, 0.07);
    tail.lineTo(0.42, -0.42);
    tail.lineTo(-0.06, 0.36);
    tail.closePath();
    comet.add(new Area(tail));
    return comet;
  }

  private static Shape veils() {
    Area veils = new Area(new Rectangle2D.Double(-0.4, -0.32, 0.8, 0.13));
    veils.add(new Area(new Rectangle2D.Double(-0.4, -0.065, 0.8, 0.13)));
    veils.add(new Area(new Rectangle2D.Double(-0.4, 0.19, 0.8, 0.13)));
    return veils;
  }

  private static Shape diamond() {
    Path2D diamond = new Path2D.Double();
    diamond.moveTo(0, -0.42);
    diamond.lineTo(0.42, 0);
    diamond.lineTo(0, 0.42);
    diamond.lineTo(-0.42, 0);
    diamond.closePath();
    return diamond;
  }

  private static Shape cross() {
    Path2D cross = new Path2D.Double();
    cross.moveTo(-0.28, -0.28);
    cross.lineTo(0.28, 0.28);
    cross.moveTo(-0.28, 0.28);
    cross.lineTo(0.28, -0.28);
    return stroked(cross, 0.13);
  }
}
