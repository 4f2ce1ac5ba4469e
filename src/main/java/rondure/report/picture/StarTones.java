package rondure.report.picture;

import java.awt.Color;
import java.awt.image.BufferedImage;
import rondure.base.Orientation;
import rondure.base.Stamp;
import rondure.stars.AverageStar;

/** An average star as a picture, in display orientation: faint light lifted. */
final class StarTones {
  /** Softening of the tones: light at this share of the peak is still well seen. */
  private static final double TONE = 0.06;

  private StarTones() {}

  /**
   * The middle of the stamp as squares, one for each stamp pixel.
   *
   * @param halfSidePx how far from the middle the picture reaches, frame pixels
   * @param side of the picture, its own pixels
   */
  static BufferedImage image(
      AverageStar average, Orientation orientation, double halfSidePx, int side) {
    Stamp stamp = average.stamp();
    double samples = 2 * halfSidePx * average.samplesPerPx();
    double middle = (stamp.sidePx() - 1) / 2.0;
    BufferedImage image = new BufferedImage(side, side, BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < side; y++) {
      for (int x = 0; x < side; x++) {
        double sampleX = ((x + 0.5) / side - 0.5) * samples;
        double sampleY = ((y + 0.5) / side - 0.5) * samples;
        image.setRGB(x, y, tone(stored(stamp, orientation, middle + sampleX, middle + sampleY)));
      }
    }
    return image;
  }

  /** The stamp's value at a display place; 0 outside. */
  private static double stored(Stamp stamp, Orientation orientation, double atX, double atY) {
    int side = stamp.sidePx();
    int x = (int) Math.round(atX);
    int y = (int) Math.round(atY);
    if (x < 0 || y < 0 || x >= side || y >= side) {
      return 0;
    }
    int storedX = (int) DisplayTurn.storedX(orientation, x, y, side);
    int storedY = (int) DisplayTurn.storedY(orientation, x, y, side);
    return stamp.at(storedX, storedY);
  }

  /** The tone of light, a share of the peak. */
  static Color of(double value) {
    return new Color(tone(value));
  }

  /** From the dark of the night to white. */
  private static int tone(double value) {
    double clamped = Double.isFinite(value) ? Math.max(0, Math.min(1, value)) : 0;
    double stretched = asinh(clamped / TONE) / asinh(1 / TONE);
    int red = (int) Math.round(18 + 237 * stretched);
    int green = (int) Math.round(26 + 229 * stretched);
    int blue = (int) Math.round(44 + 211 * stretched);
    return red << 16 | green << 8 | blue;
  }

  private static double asinh(double x) {
    return Math.log(x + Math.sqrt(x * x + 1));
  }
}
