package rondure.report.picture;

import java.awt.Color;

/**
 * The colours of the report. Told apart by lightness as well as hue, and every meaning also has a
 * shape or a word; all reach a contrast of 3 : 1 on white (WCAG 2.1, 1.4.11).
 */
public final class Palette {
  public static final Color INK = new Color(0x1D2733);
  public static final Color MUTED = new Color(0x5A6675);
  public static final Color HAIRLINE = new Color(0xC3CBD4);
  public static final Color PAPER = Color.WHITE;
  public static final Color GROUND = new Color(0xE6EAEE);

  /** Frames worth keeping, stars as good as they get. */
  public static final Color SHARP = new Color(0x17497F);

  /** Stars that are clearly not round. */
  public static final Color STRETCHED = new Color(0xB25D00);

  static final Color FOCUS = new Color(0x7B3F98);
  static final Color TRIPOD = new Color(0x4A3423);
  static final Color LENS = new Color(0x0D7A80);
  static final Color HAZE = new Color(0x7A8591);
  static final Color UNDECIDED = new Color(0x3D4654);
  static final Color ABSENT = new Color(0x808A95);

  /** Light left over: as much as expected, and less. More is paper white. */
  static final Color AS_EXPECTED = new Color(0xA9B4BF);

  static final Color LESS_LIGHT = new Color(0x0E1C33);

  private Palette() {}

  /** Between two colours: 0 is the first, 1 the second. */
  static Color mixed(Color first, Color second, double part) {
    return new Color(
        (int) Math.round(first.getRed() + part * (second.getRed() - first.getRed())),
        (int) Math.round(first.getGreen() + part * (second.getGreen() - first.getGreen())),
        (int) Math.round(first.getBlue() + part * (second.getBlue() - first.getBlue())));
  }
}
