package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.util.List;
import rondure.sky.TrailRate;

/**
 * The trail of a star against the exposure, a line for each aim, over the width of the star itself:
 * where a line crosses that, the trail is as long as the star is wide.
 *
 * @param aims in any order; their lines, which are straight, are told apart by weight and dashes
 * @param width of the star itself
 * @param exposures marked on the axis, the weightiest first
 * @param words what is written along the axes and into the field
 */
public record TrailChart(List<Aim> aims, Width width, List<Exposure> exposures, Words words)
    implements Picture {
  static final float FONT_SIZE = 10;
  static final double DOT = 6;
  private static final float[][] DASHES = {{}, {7, 3}, {2, 2.5f}, {9, 2.5f, 2, 2.5f}};

  /**
   * Where the camera looks.
   *
   * @param name in a few words
   * @param later its name where the field ends before the crossing
   * @param rate how fast the sky moves there
   * @param crossing the exposure that draws a trail as long as the star is wide, as printed
   * @param isOwn whether the night's frames look there
   */
  public record Aim(String name, String later, TrailRate rate, String crossing, boolean isOwn) {}

  /**
   * @param px how wide
   * @param words its name and number
   */
  public record Width(double px, String words) {
    public Width {
      if (!(px > 0 && Double.isFinite(px))) {
        throw new IllegalArgumentException("px must be > 0, was " + px);
      }
    }
  }

  /**
   * @param seconds where on the axis
   * @param words what it is
   * @param farther its words where the field ends before it
   */
  public record Exposure(double seconds, String words, String farther) {}

  /**
   * @param along what runs to the right, with its unit
   * @param up what runs up, with its unit
   * @param above what longer trails do
   * @param below what shorter ones do
   */
  public record Words(String along, String up, String above, String below) {}

  public TrailChart {
    aims = List.copyOf(aims);
    exposures = List.copyOf(exposures);
    if (aims.isEmpty()) {
      throw new IllegalArgumentException("a chart of trails needs an aim");
    }
  }

  /** The longest exposure that it shows. */
  public double mostSeconds() {
    return TrailPlot.mostSeconds(aims, width.px());
  }

  @Override
  public void draw(Graphics2D graphics, double wide, double high) {
    TrailPlot plot = TrailPlot.of(this, wide, high);
    TrailLabels labels = TrailLabels.of(this, plot);
    plot.drawBand(graphics, width.px());
    plot.drawAxes(graphics, words);
    drawWidth(graphics, plot);
    aims.forEach(aim -> drawLine(graphics, plot, aim));
    for (Aim aim : aims) {
      plot.crossing(aim, width.px()).ifPresent(at -> drawDot(graphics, at.getX(), at.getY()));
    }
    labels.draw(graphics);
    plot.marks().draw(graphics, plot.area());
  }

  private void drawWidth(Graphics2D graphics, TrailPlot plot) {
    double y = plot.y(width.px());
    graphics.setColor(Palette.SHARP);
    graphics.setStroke(new BasicStroke(1));
    graphics.draw(new Line2D.Double(plot.area().getMinX(), y, plot.area().getMaxX(), y));
  }

  private void drawLine(Graphics2D graphics, TrailPlot plot, Aim aim) {
    graphics.setColor(colour(aim));
    graphics.setStroke(stroke(aim));
    graphics.draw(new Line2D.Double(plot.origin(), plot.end(aim)));
  }

  /** Its name at the end of its line. */
  String endName(Aim aim) {
    double most = mostSeconds();
    return aim.rate().secondsFor(width.px()).filter(seconds -> seconds <= most).isPresent()
        ? aim.name()
        : aim.later();
  }

  private static Color colour(Aim aim) {
    return aim.isOwn() ? Palette.STRETCHED : Palette.INK;
  }

  /** The own aim is thick; of the others each has its dashes. */
  private BasicStroke stroke(Aim aim) {
    if (aim.isOwn()) {
      return new BasicStroke(2, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER);
    }
    int number = (int) aims.stream().takeWhile(a -> a != aim).filter(a -> !a.isOwn()).count();
    float[] dashes = DASHES[number % DASHES.length];
    return dashes.length == 0
        ? new BasicStroke(1, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER)
        : new BasicStroke(1, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 4, dashes, 0);
  }

  private static void drawDot(Graphics2D graphics, double x, double y) {
    Ellipse2D dot = new Ellipse2D.Double(x - DOT / 2, y - DOT / 2, DOT, DOT);
    graphics.setColor(Palette.INK);
    graphics.fill(dot);
    graphics.setColor(Palette.PAPER);
    graphics.setStroke(new BasicStroke(0.8f));
    graphics.draw(dot);
  }
}
