package rondure.report.picture;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;

/** A picture drawn on white, one pixel for each unit. */
final class Drawn {
  private final BufferedImage image;

  private Drawn(BufferedImage image) {
    this.image = image;
  }

  static Drawn of(Picture picture, double width, double height) {
    BufferedImage image = new BufferedImage((int) width, (int) height, BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = image.createGraphics();
    graphics.setColor(Color.WHITE);
    graphics.fillRect(0, 0, image.getWidth(), image.getHeight());
    picture.draw(graphics, width, height);
    graphics.dispose();
    return new Drawn(image);
  }

  /** Whether there is dark ink within two pixels. */
  boolean isDark(int x, int y) {
    boolean dark = false;
    for (int i = 0; i < 25; i++) {
      dark |= (image.getRGB(x + i % 5 - 2, y + i / 5 - 2) & 0xFF) < 110;
    }
    return dark;
  }

  /** The rightmost pixel of a row with any ink; -1 where there is none. */
  int lastInked(int row) {
    for (int x = image.getWidth() - 1; x >= 0; x--) {
      if ((image.getRGB(x, row) & 0xFF) < 235) {
        return x;
      }
    }
    return -1;
  }
}
