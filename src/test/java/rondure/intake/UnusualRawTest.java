package rondure.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rondure.base.FrameProblem;
import rondure.base.PixelPlane;
import rondure.testing.LibRaw;

/** RAW files out of the ordinary (tags: Adobe Digital Negative Specification 1.7.1). */
class UnusualRawTest {
  private static final int[] BLACK = {512};

  @BeforeEach
  void librawIsThere() {
    LibRaw.isThere();
  }

  /** Tag 50706, DNGVersion 1.4.0.0: one byte each. */
  private static TestTiff dng(int photometric, int compression) {
    TestTiff tiff = new TestTiff();
    tiff.width = 128;
    tiff.height = 128;
    tiff.tileSide = 64;
    tiff.photometric = photometric;
    tiff.compression = compression;
    tiff.extraTags.add(new int[] {254, 4, 1, 0});
    tiff.extraTags.add(new int[] {50_706, 1, 4, 1 | 4 << 8});
    if (photometric == 32_803) {
      tiff.extraTags.add(new int[] {33_421, 3, 2, 2 | 2 << 16});
      tiff.extraTags.add(new int[] {33_422, 1, 4, 1 << 8 | 1 << 16 | 2 << 24});
    }
    return tiff;
  }

  /** Half floats taken for whole numbers would pass for a strange tone curve. */
  @ParameterizedTest
  @CsvSource({"16,1", "32,1", "32,8"})
  void floatingPointIsRefusedByName(int bits, int compression) {
    TestTiff tiff = dng(32_803, compression);
    tiff.bits = bits;
    tiff.format = 3;
    String refusal = Decoding.refusal(tiff.write((x, y, s) -> 0x3C00 + x + y));
    assertTrue(refusal.startsWith("this is a floating-point DNG"), refusal);
  }

  @ParameterizedTest
  @CsvSource({"8,Deflate", "52546,JPEG XL"})
  void methodsThatLibRawDoesNotUnpackAreNamed(int compression, String name) {
    String refusal = Decoding.refusal(dng(32_803, compression).write((x, y, s) -> 700 + x + y));
    assertTrue(refusal.startsWith("this DNG is packed with " + name), refusal);
    assertTrue(refusal.contains("export a linear 16-bit TIFF"), refusal);
  }

  /** Compression 34892: 8-bit JPEG pieces, as coarse as any developed picture. */
  @Test
  void lossyDngCountsAsDeveloped() throws FrameProblem {
    TestTiff tiff = dng(34_892, 34_892);
    tiff.samples = 3;
    tiff.bits = 8;
    DecodedFrame frame = Decoding.decode(tiff.write((x, y, s) -> 100));
    assertEquals(Linearity.DEVELOPED, frame.linearity());
    assertEquals(PixelPlane.Lattice.EVERY_PIXEL, frame.plane().lattice());
  }

  /** Light 180 on both greens, 90 and 135 on the others, as in a real mosaic of the night sky. */
  private static int night(int x, int y, int greenParity, Random random) {
    int light = (x + y) % 2 == greenParity ? 180 : y % 2 == 0 ? 90 : 135;
    return (int) Math.round(512 + light + 15 * random.nextGaussian());
  }

  @ParameterizedTest
  @CsvSource({"RGGB,0", "RGGB,1", "GRBG,0", "GRBG,1", "BGGR,0", "GBRG,1"})
  void greenIsWhereBothDiagonalSitesAgree(String cell, int greenParity) throws FrameProblem {
    Random random = new Random(12);
    byte[] dng = TestTiff.dng(200, 160, cell, BLACK, (x, y, s) -> night(x, y, greenParity, random));
    PixelPlane plane = Decoding.decode(dng).plane();
    assertEquals(greenParity, plane.parity());
    for (int y = 0; y < 20; y++) {
      for (int x = 0; x < 20; x++) {
        assertEquals((x + y) % 2 != greenParity, Float.isNaN(plane.at(x, y)), x + ", " + y);
      }
    }
  }

  /** Two greens of a sensor may differ by some per cent (common practice); red may equal blue. */
  @ParameterizedTest
  @CsvSource({"1.0,135", "1.05,135", "1.05,90"})
  void unequalGreensOfASoundFileChangeNothing(double gain, int blue) throws FrameProblem {
    Random random = new Random(13);
    byte[] dng =
        TestTiff.dng(
            200,
            160,
            "RGGB",
            BLACK,
            (x, y, s) -> {
              double green = y % 2 == 0 ? 180 * gain : 180;
              double light = (x + y) % 2 == 1 ? green : y % 2 == 0 ? 90 : blue;
              return (int) Math.round(512 + light + 15 * random.nextGaussian());
            });
    assertEquals(1, Decoding.decode(dng).plane().parity());
  }
}
