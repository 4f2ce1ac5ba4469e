package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Arc2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.util.List;
import java.util.Optional;
import rondure.base.Moments;
import rondure.base.Orientation;
import rondure.stars.Star;

/**
 * Which way the stars are stretched, as displayed: a wheel of sectors, each as long as its share of
 * all the stretching. Opposite sectors are one direction. The thin ring is where all would end if
 * no direction were preferred. On the rim stands which way the sky moves them.
 *
 * @param stars measured, stored coordinates
 * @param orientation how the frame is shown
 * @param sky the sky's directions, where they are known
 * @param words for the mark of the sky
 */
public record DirectionFan(
    List<Star> stars, Orientation orientation, Optional<SkyDirections> sky, PictureWords words)
    implements Picture {
  private static final double MARGIN = 17;
  private static final float FONT_SIZE = 9.4f;

  /** Sectors over half a turn. */
  static final int SECTORS = 12;

  public DirectionFan {
    stars = List.copyOf(stars);
  }

  /**
   * Share of the elongation in each sector of 15°, the first centred on "to the right", clockwise;
   * a star weighs as its distortion (a² − b²)/(a² + b²). All 0 without stretched stars.
   */
  double[] shares() {
    double[] shares = new double[SECTORS];
    double sum = 0;
    for (Star star : stars) {
      Moments shown = orientation.display(star.moments());
      double weight = shown.meanPx2() > 0 ? shown.spin2Px2() / shown.meanPx2() : 0;
      int sector = (int) Math.floor(shown.positionAngleRad() / Math.PI * SECTORS + 0.5) % SECTORS;
      shares[sector] += weight;
      sum += weight;
    }
    for (int i = 0; i < SECTORS && sum > 0; i++) {
      shares[i] /= sum;
    }
    return shares;
  }

  @Override
  public void draw(Graphics2D graphics, double width, double height) {
    double[] shares = shares();
    double largest = 0;
    int strongest = 0;
    for (int i = 0; i < SECTORS; i++) {
      if (shares[i] > largest) {
        largest = shares[i];
        strongest = i;
      }
    }
    double radius = Math.min(width, height) / 2 - (sky.isPresent() ? MARGIN : 2);
    double perShare = radius / Math.max(largest, 3.0 / SECTORS);
    double x = width / 2;
    double y = height / 2;
    drawCross(graphics, x, y, radius);
    for (int i = 0; i < SECTORS; i++) {
      boolean stands = i == strongest && largest > 3.0 / SECTORS;
      graphics.setColor(stands ? Palette.STRETCHED : Palette.SHARP);
      fillSector(graphics, x, y, shares[i] * perShare, i);
    }
    double even = perShare / SECTORS;
    graphics.setColor(Palette.MUTED);
    graphics.setStroke(new BasicStroke(0.8f));
    graphics.draw(new Ellipse2D.Double(x - even, y - even, 2 * even, 2 * even));
    sky.filter(SkyDirections::isOneWay).ifPresent(way -> drawSky(graphics, way, x, y, radius));
  }

  /** Arcs on both sides of the rim, a tick in the middle of each, the word at the upper one. */
  private void drawSky(Graphics2D graphics, SkyDirections way, double x, double y, double radius) {
    double spread = Math.max(2, Math.toDegrees(way.spreadRad()));
    double middle = Math.toDegrees(way.middleRad());
    double rim = radius + 2.5;
    graphics.setColor(Palette.INK);
    for (int half = 0; half < 2; half++) {
      graphics.setStroke(new BasicStroke(2.4f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER));
      double start = -(middle + spread) + 180 * half;
      graphics.draw(
          new Arc2D.Double(x - rim, y - rim, 2 * rim, 2 * rim, start, 2 * spread, Arc2D.OPEN));
      graphics.setStroke(new BasicStroke(1f));
      double angle = way.middleRad() + Math.PI * half;
      double cos = Math.cos(angle);
      double sin = Math.sin(angle);
      double in = rim - 5;
      double out = rim + 3.5;
      graphics.draw(new Line2D.Double(x + in * cos, y + in * sin, x + out * cos, y + out * sin));
    }
    drawWord(graphics, x, y, rim, way.middleRad());
  }

  /** Beside the upper tick, clear of the arc. */
  private void drawWord(Graphics2D graphics, double x, double y, double rim, double angle) {
    String word = words.say("picture.fan.sky");
    graphics.setFont(ReportFonts.sans(FONT_SIZE));
    double wide = graphics.getFontMetrics().stringWidth(word);
    double cos = -Math.cos(angle);
    double sin = -Math.sin(angle);
    double left = x + (rim + 5) * cos + (cos < -0.3 ? -wide : cos > 0.3 ? 0 : -wide / 2);
    double fit = Math.max(0, Math.min(2 * x - wide, left));
    boolean level = Math.abs(sin) < 0.45;
    double base = level ? y + rim * sin - 7 : y + (rim + 4) * sin;
    graphics.drawString(word, (float) fit, (float) base);
  }

  private static void drawCross(Graphics2D graphics, double x, double y, double radius) {
    graphics.setColor(Palette.HAIRLINE);
    graphics.setStroke(new BasicStroke(0.7f));
    graphics.draw(new Line2D.Double(x - radius, y, x + radius, y));
    graphics.draw(new Line2D.Double(x, y - radius, x, y + radius));
    graphics.draw(new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius));
  }

  /** Java's arcs run anticlockwise, angles here clockwise. */
  private static void fillSector(
      Graphics2D graphics, double x, double y, double length, int sector) {
    double step = 180.0 / SECTORS;
    for (int half = 0; half < 2 && length > 0.2; half++) {
      double start = -(sector * step + step / 2) + half * 180;
      graphics.fill(
          new Arc2D.Double(
              x - length, y - length, 2 * length, 2 * length, start + 1, step - 2, Arc2D.PIE));
    }
  }
}
