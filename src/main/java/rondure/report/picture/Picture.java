package rondure.report.picture;

import java.awt.Graphics2D;

/** Something that can be drawn at any size. */
@FunctionalInterface
public interface Picture {

  /**
   * Draws into the rectangle from (0, 0) to (width, height).
   *
   * @param graphics where to draw; units are CSS pixels (1/96 inch), y down
   * @param width in CSS pixels
   * @param height in CSS pixels
   */
  void draw(Graphics2D graphics, double width, double height);
}
