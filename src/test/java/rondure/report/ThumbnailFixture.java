package rondure.report;

import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.ConcurrentHashMap;
import javax.imageio.ImageIO;
import rondure.base.JpegPicture;
import rondure.intake.ShotFacts;

/** Small pictures that look like a landscape at night. */
final class ThumbnailFixture {
  private static final int VARIANTS = 6;
  private static final int GRAIN = 10;
  private static final Map<Integer, JpegPicture> DRAWN = new ConcurrentHashMap<>();

  private ThumbnailFixture() {}

  /** Where the hills begin, as a share of the height from the top, at a share of the width. */
  static double horizon(double along) {
    return 0.76 + 0.06 * Math.sin(7 * along) + 0.05 * Math.sin(17 * along + 1);
  }

  /** One of a few pictures, drawn once. */
  static JpegPicture night(ShotFacts facts, int seed) {
    boolean portrait = facts.orientation().swapsSides();
    int kind = seed % VARIANTS * 2 + (portrait ? 1 : 0);
    return DRAWN.computeIfAbsent(kind, key -> drawn(portrait, seed % VARIANTS));
  }

  /** The same with the grain of a high ISO, 60 kB and more. */
  static JpegPicture grainy(ShotFacts facts, int seed) {
    boolean portrait = facts.orientation().swapsSides();
    int kind = -1 - seed % VARIANTS * 2 - (portrait ? 1 : 0);
    return DRAWN.computeIfAbsent(kind, key -> withGrain(night(facts, seed), new Random(seed)));
  }

  private static JpegPicture withGrain(JpegPicture smooth, Random random) {
    try {
      BufferedImage image = ImageIO.read(new ByteArrayInputStream(smooth.bytes()));
      for (int y = 0; y < image.getHeight(); y++) {
        for (int x = 0; x < image.getWidth(); x++) {
          int grain = (int) (GRAIN * random.nextGaussian());
          Color colour = new Color(image.getRGB(x, y));
          int grey = Math.min(255, Math.max(0, colour.getGreen() + grain));
          image.setRGB(x, y, new Color(grey, grey, grey).getRGB());
        }
      }
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      ImageIO.write(image, "jpeg", bytes);
      return new JpegPicture(bytes.toByteArray());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static JpegPicture drawn(boolean portrait, int seed) {
    int width = portrait ? 427 : 640;
    int height = portrait ? 640 : 427;
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = image.createGraphics();
    graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    graphics.setPaint(new GradientPaint(0, 0, new Color(0x0B1430), 0, height, new Color(0x6B5B73)));
    graphics.fillRect(0, 0, width, height);
    Random random = new Random(seed);
    for (int i = 0; i < 900; i++) {
      int grey = 120 + random.nextInt(136);
      graphics.setColor(new Color(grey, grey, grey));
      double band = random.nextGaussian() * 60;
      int x = random.nextInt(width);
      int y = i % 2 == 0 ? random.nextInt(height) : (int) (height * 0.2 + x * 0.4 + band);
      graphics.fillRect(x, y, i % 30 == 0 ? 2 : 1, i % 30 == 0 ? 2 : 1);
    }
    Path2D hills = new Path2D.Double();
    hills.moveTo(0, height);
    for (int x = 0; x <= width; x += 4) {
      hills.lineTo(x, horizon((double) x / width) * height);
    }
    hills.lineTo(width, height);
    graphics.setColor(new Color(0x07090D));
    graphics.fill(hills);
    graphics.dispose();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      ImageIO.write(image, "jpeg", bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return new JpegPicture(bytes.toByteArray());
  }
}
