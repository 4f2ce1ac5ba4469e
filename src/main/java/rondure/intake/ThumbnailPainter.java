package rondure.intake;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Arrays;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import rondure.base.JpegPicture;
import rondure.base.Orientation;

/**
 * Paints the cells of a frame as a small picture in which the night can be seen.
 *
 * <p>Each colour is taken from its own dark level, the colours are balanced on the sky, and the
 * brightness runs through asinh(k L) / asinh(k) with k such that the median becomes moderately dark
 * (the asinh stretch of Lupton et al. 2004, PASP 116, 133). Colour follows brightness, so that
 * bright stars keep their hue.
 */
final class ThumbnailPainter {
  private static final float JPEG_QUALITY = 0.8f;
  private static final double MEDIAN_TONE = 0.24;
  private static final double DARK_FRACTION = 0.005;
  private static final double BRIGHT_FRACTION = 0.9995;
  private static final double MOST_STRETCH = 3000;
  private static final double MOST_TONE_OF_STEP = 0.05;
  private static final double FEWEST_STEPS = 40;
  private static final float SATURATION = 0.55f;
  private static final int SAMPLES = 20_000;

  private ThumbnailPainter() {}

  /**
   * @param stepCounts counts between neighbouring codes near black: a picture of few codes is not
   *     stretched until single steps stand out
   * @param balanced true when the colours are already in balance (developed files)
   * @throws IOException when the JPEG writer fails
   */
  static JpegPicture paint(
      ThumbnailCells cells, double stepCounts, boolean balanced, Orientation orientation)
      throws IOException {
    float[][] colours = new float[cells.colour() ? 3 : 1][];
    for (int i = 0; i < colours.length; i++) {
      Channel channel = cells.colour() ? Channel.values()[i] : Channel.GREEN;
      colours[i] = cells.means(channel);
      subtractDark(colours[i]);
    }
    if (colours.length == 3 && !balanced) {
      balance(colours);
    }
    float[] light = brightness(colours);
    float[] tones = tones(light, stepCounts);
    BufferedImage picture = turned(cells, orientation);
    for (int i = 0; i < light.length; i++) {
      int x = i % cells.width();
      int y = i / cells.width();
      picture.setRGB(
          (int) orientation.displayX(x, y, cells.width(), cells.height()),
          (int) orientation.displayY(x, y, cells.width(), cells.height()),
          colour(colours, i, light[i], tones[i]));
    }
    return encode(picture);
  }

  private static void subtractDark(float[] values) {
    float dark = percentile(values, DARK_FRACTION);
    for (int i = 0; i < values.length; i++) {
      values[i] = Math.max(0, values[i] - dark);
    }
  }

  /** Scales red and blue to the green median: the sky becomes grey. */
  private static void balance(float[][] colours) {
    float green = percentile(colours[1], 0.5);
    for (float[] colour : new float[][] {colours[0], colours[2]}) {
      float own = percentile(colour, 0.5);
      float factor = own > 0 && green > 0 ? green / own : 1;
      for (int i = 0; i < colour.length; i++) {
        colour[i] *= factor;
      }
    }
  }

  private static float[] brightness(float[][] colours) {
    if (colours.length == 1) {
      return colours[0];
    }
    float[] light = new float[colours[0].length];
    for (int i = 0; i < light.length; i++) {
      light[i] = 0.25f * colours[0][i] + 0.5f * colours[1][i] + 0.25f * colours[2][i];
    }
    return light;
  }

  private static float[] tones(float[] light, double stepCounts) {
    double bright = Math.max(percentile(light, BRIGHT_FRACTION), FEWEST_STEPS * stepCounts);
    float[] tones = new float[light.length];
    if (!(bright > 0)) {
      return tones;
    }
    double k = stretch(percentile(light, 0.5) / bright, stepCounts / bright);
    double scale = 1 / asinh(k);
    for (int i = 0; i < light.length; i++) {
      tones[i] = (float) Math.min(1, scale * asinh(k * light[i] / bright));
    }
    return tones;
  }

  /** The k that lifts {@code median} (of white = 1) to the wanted tone, by bisection. */
  private static double stretch(double median, double step) {
    double low = 1e-3;
    double high = MOST_STRETCH;
    for (int i = 0; i < 40; i++) {
      double middle = Math.sqrt(low * high);
      double full = asinh(middle);
      if (asinh(middle * median) < MEDIAN_TONE * full
          && asinh(middle * step) < MOST_TONE_OF_STEP * full) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  private static double asinh(double x) {
    return Math.log(x + Math.sqrt(x * x + 1));
  }

  private static int colour(float[][] colours, int i, float light, float tone) {
    if (colours.length == 1 || !(light > 0)) {
      int grey = Math.round(255 * tone);
      return grey << 16 | grey << 8 | grey;
    }
    int rgb = 0;
    for (float[] colour : colours) {
      int value = Math.round(255 * tone * (1 - SATURATION + SATURATION * colour[i] / light));
      rgb = rgb << 8 | Math.min(255, value);
    }
    return rgb;
  }

  private static float percentile(float[] values, double fraction) {
    int step = Math.max(1, values.length / SAMPLES);
    float[] sample = new float[(values.length + step - 1) / step];
    for (int i = 0; i < sample.length; i++) {
      sample[i] = values[i * step];
    }
    Arrays.sort(sample);
    return sample[(int) (fraction * (sample.length - 1))];
  }

  private static BufferedImage turned(ThumbnailCells cells, Orientation orientation) {
    return new BufferedImage(
        orientation.displayWidthPx(cells.width(), cells.height()),
        orientation.displayHeightPx(cells.width(), cells.height()),
        BufferedImage.TYPE_INT_RGB);
  }

  private static JpegPicture encode(BufferedImage picture) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 16);
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
      ImageWriteParam param = writer.getDefaultWriteParam();
      param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      param.setCompressionQuality(JPEG_QUALITY);
      writer.setOutput(out);
      writer.write(null, new IIOImage(picture, null, null), param);
    } finally {
      writer.dispose();
    }
    return new JpegPicture(bytes.toByteArray());
  }
}
