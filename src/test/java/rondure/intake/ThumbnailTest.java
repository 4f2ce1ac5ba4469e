package rondure.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rondure.base.FrameProblem;
import rondure.base.Orientation;

class ThumbnailTest {

  /** A dark sky with one bright quarter: x < 30, y < 20 of 120 x 80. */
  private static TestTiff corner() {
    TestTiff tiff = new TestTiff();
    tiff.width = 120;
    tiff.height = 80;
    return tiff;
  }

  private static int grey(BufferedImage picture, int x, int y) {
    return picture.getRGB(x, y) >> 8 & 0xFF;
  }

  /** Which corner of the display shows the stored top-left corner: EXIF 2.32, Orientation. */
  @ParameterizedTest
  @EnumSource(Orientation.class)
  void everyOrientationIsShownUpright(Orientation orientation) throws FrameProblem {
    byte[] file = corner().write((x, y, s) -> x < 30 && y < 20 ? 20_000 : 500);
    BufferedImage shown = Decoding.thumbnail(Decoding.decode(file, orientation));
    boolean swapped = orientation.exifValue() >= 5;
    assertEquals(swapped ? 80 : 120, shown.getWidth());
    assertEquals(swapped ? 120 : 80, shown.getHeight());
    boolean right = "2367".indexOf('0' + orientation.exifValue()) >= 0;
    boolean bottom = "3478".indexOf('0' + orientation.exifValue()) >= 0;
    for (boolean atRight : new boolean[] {false, true}) {
      for (boolean atBottom : new boolean[] {false, true}) {
        int level =
            grey(shown, atRight ? shown.getWidth() - 5 : 5, atBottom ? shown.getHeight() - 5 : 5);
        boolean bright = atRight == right && atBottom == bottom;
        assertTrue(bright == level > 200, orientation + ": " + level);
      }
    }
  }

  @Test
  void aNightSkyIsShownModeratelyDarkWithItsStars() throws FrameProblem {
    TestTiff tiff = new TestTiff();
    tiff.width = 1500;
    tiff.height = 1000;
    Random random = new Random(11);
    byte[] file =
        tiff.write(
            (x, y, s) -> {
              boolean star = x % 150 >= 72 && x % 150 < 78 && y % 150 >= 72 && y % 150 < 78;
              return (int) (star ? 30_000 : 600 + 0.2 * y + 30 * random.nextGaussian());
            });
    BufferedImage shown = Decoding.thumbnail(Decoding.decode(file));
    assertEquals(640, shown.getWidth());
    assertEquals(427, shown.getHeight());
    double mean = 0;
    for (int y = 0; y < 427; y++) {
      for (int x = 0; x < 640; x++) {
        mean += grey(shown, x, y) / (640.0 * 427);
      }
    }
    assertTrue(mean > 25 && mean < 110, "mean brightness " + mean);
    assertTrue(grey(shown, 75 * 640 / 1500, 75 * 640 / 1500) > 220);
  }

  @Test
  void aPictureOfFewCodesIsNotStretchedToNoise() throws FrameProblem {
    TestTiff tiff = new TestTiff();
    tiff.width = 200;
    tiff.height = 200;
    tiff.bits = 8;
    Random random = new Random(12);
    byte[] file = tiff.write((x, y, s) -> random.nextInt(2));
    BufferedImage shown = Decoding.thumbnail(Decoding.decode(file));
    assertTrue(grey(shown, 100, 100) < 80, "grey " + grey(shown, 100, 100));
  }

  @Test
  void coloursSurvive() throws FrameProblem {
    TestTiff tiff = new TestTiff();
    tiff.width = 100;
    tiff.height = 100;
    tiff.samples = 3;
    tiff.photometric = 2;
    byte[] file =
        tiff.write((x, y, s) -> 1000 + (y < 50 ? 0 : 20_000) / (s == (x < 50 ? 0 : 2) ? 1 : 4));
    BufferedImage shown = Decoding.thumbnail(Decoding.decode(file));
    int left = shown.getRGB(25, 75);
    int right = shown.getRGB(75, 75);
    assertTrue((left >> 16 & 0xFF) > (left & 0xFF) + 30, Integer.toHexString(left));
    assertTrue((right & 0xFF) > (right >> 16 & 0xFF) + 30, Integer.toHexString(right));
  }

  @Test
  void thumbnailsCarryNoMetadata() throws FrameProblem {
    byte[] jpeg = Decoding.decode(corner().write((x, y, s) -> x * y)).thumbnail().bytes();
    for (int i = 0; i < jpeg.length - 1; i++) {
      int marker = (jpeg[i] & 0xFF) << 8 | jpeg[i + 1] & 0xFF;
      assertTrue(marker < 0xFFE1 || marker > 0xFFEF && marker != 0xFFFE, "marker " + marker);
    }
  }
}
