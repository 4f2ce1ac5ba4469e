package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import rondure.base.Orientation;
import rondure.stars.StarField;

/** Drawn over a photograph: where the sky ends, with the words "sky" and "ground". */
public record RegionOverlay(StarField field, Orientation orientation, PictureWords words)
    implements Picture {
  private static final String SKY = "picture.sky";
  private static final String GROUND = "picture.ground";
  private static final Color LIGHT = Color.WHITE;
  private static final Color DARK = new Color(0x10161D);

  @Override
  public void draw(Graphics2D graphics, double width, double height) {
    DisplayFrame frame = DisplayFrame.fit(field, orientation, width, height);
    Path2D line = frame.horizon(field.mask());
    drawCased(graphics, line);
    Rectangle2D ground = frame.ground(field.mask()).getBounds2D();
    double groundShare = 1 - field.sky().skyShare();
    if (groundShare > 0.06 && groundShare < 0.94) {
      boolean groundBelow = ground.getCenterY() > height / 2;
      label(graphics, groundBelow ? GROUND : SKY, width, height - 7);
      label(graphics, groundBelow ? SKY : GROUND, width, 7);
    } else {
      label(graphics, groundShare <= 0.06 ? SKY : GROUND, width, 7);
    }
  }

  private static void drawCased(Graphics2D graphics, Shape line) {
    graphics.setStroke(new BasicStroke(2.2f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
    graphics.setColor(DARK);
    graphics.draw(line);
    graphics.setStroke(new BasicStroke(0.9f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
    graphics.setColor(LIGHT);
    graphics.draw(line);
  }

  /** A word in a dark pill, at the right. */
  private void label(Graphics2D graphics, String key, double width, double centreY) {
    String word = words.say(key);
    graphics.setFont(ReportFonts.sans(8.5f));
    double wide = graphics.getFontMetrics().stringWidth(word);
    graphics.setColor(DARK);
    graphics.fill(new RoundRectangle2D.Double(width - wide - 9, centreY - 6, wide + 7, 11.5, 6, 6));
    graphics.setColor(LIGHT);
    graphics.drawString(word, (float) (width - wide - 5.5), (float) (centreY + 2.8));
  }
}
