package rondure.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rondure.base.FrameProblem;
import rondure.base.PixelPlane;
import rondure.testing.LibRaw;

class RawDecoderTest {
  private static final int[] BLACK = {512};

  @BeforeEach
  void librawIsThere() {
    LibRaw.isThere();
  }

  private static int site(int x, int y) {
    return 600 + (x * 31 + y * 57) % 900;
  }

  @ParameterizedTest
  @CsvSource({
    "RGGB,1,64,48",
    "BGGR,1,64,48",
    "GRBG,0,64,48",
    "GBRG,0,64,48",
    "RGGB,1,61,47",
    "GRBG,0,61,47"
  })
  void greenSitesOfEveryBayerPhaseAreExact(String cell, int parity, int width, int height)
      throws FrameProblem {
    byte[] dng = TestTiff.dng(width, height, cell, BLACK, (x, y, s) -> site(x, y));
    DecodedFrame frame = Decoding.decode(dng);
    PixelPlane plane = frame.plane();
    assertEquals(PixelPlane.Lattice.CHECKERBOARD, plane.lattice());
    assertEquals(parity, plane.parity());
    assertEquals(width, plane.widthPx());
    assertEquals(height, plane.heightPx());
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        float wanted = (x + y) % 2 == parity ? site(x, y) - 512 : Float.NaN;
        assertEquals(wanted, plane.at(x, y), x + ", " + y);
      }
    }
    assertEquals(16_383 - 512, frame.whiteLevelCounts());
    assertEquals(Linearity.SENSOR, frame.linearity());
  }

  @Test
  void noiseBelowBlackStaysNegativeSoThatTheMeanIsRight() throws FrameProblem {
    Random random = new Random(7);
    byte[] dng =
        TestTiff.dng(
            200,
            200,
            "RGGB",
            BLACK,
            (x, y, s) -> (int) Math.round(512 + 3 + 20 * random.nextGaussian()));
    PixelPlane plane = Decoding.decode(dng).plane();
    double sum = 0;
    int below = 0;
    for (float sample : plane.samples()) {
      if (!Float.isNaN(sample)) {
        sum += sample;
        below += sample < 0 ? 1 : 0;
      }
    }
    // 20,000 samples of sigma 20: the mean is good to 0.14
    assertEquals(3, sum / 20_000, 0.6);
    // Φ(-3.5 / 20) = 0.43 of the samples lie below 0
    assertEquals(0.43, below / 20_000.0, 0.03);
  }

  @Test
  void eachGreenHasItsOwnBlackLevel() throws FrameProblem {
    // BlackLevelRepeatDim 1 x 2: columns alternate 500, 540
    byte[] dng = TestTiff.dng(50, 40, "RGGB", new int[] {500, 540}, (x, y, s) -> 1000);
    PixelPlane plane = Decoding.decode(dng).plane();
    assertEquals(460, plane.at(1, 0));
    assertEquals(500, plane.at(0, 1));
  }

  @Test
  void clippedSitesBelowTheStatedWhiteSetTheWhiteLevel() throws FrameProblem {
    Random random = new Random(8);
    byte[] dng =
        TestTiff.dng(
            300,
            200,
            "RGGB",
            BLACK,
            (x, y, s) -> x / 4 == 30 && y / 16 == 5 ? 15_000 : 700 + random.nextInt(60));
    assertEquals(15_000 - 512, Decoding.decode(dng).whiteLevelCounts());
  }

  @Test
  void linearRawGivesGreenEverywhere() throws FrameProblem {
    TestTiff tiff = new TestTiff();
    tiff.width = 40;
    tiff.height = 30;
    tiff.rowsPerStrip = 30;
    tiff.samples = 3;
    tiff.photometric = 34_892;
    tiff.extraTags.add(new int[] {254, 4, 1, 0});
    tiff.extraTags.add(new int[] {50_706, 1, 4, 1 | 4 << 8});
    byte[] dng = tiff.write((x, y, s) -> 1000 * s + 10 * x + y + 100);
    DecodedFrame frame = Decoding.decode(dng);
    assertEquals(PixelPlane.Lattice.EVERY_PIXEL, frame.plane().lattice());
    assertEquals(1000 + 10 * 7 + 3 + 100, frame.plane().at(7, 3));
  }

  @Test
  void aPatternOfSixBySixGivesItsScatteredGreenSites() throws FrameProblem {
    // The published 6 x 6 colour filter pattern: 20 green, 8 red, 8 blue sites.
    String cell = "GGRGGBGGBGGRBRGRBGGGBGGRGGRGGBRBGBRG";
    TestTiff tiff = new TestTiff();
    tiff.width = 66;
    tiff.height = 60;
    tiff.rowsPerStrip = 60;
    tiff.photometric = 32_803;
    byte[] pattern = new byte[36];
    for (int i = 0; i < 36; i++) {
      pattern[i] = (byte) "RGB".indexOf(cell.charAt(i));
    }
    tiff.extraTags.add(new int[] {254, 4, 1, 0});
    tiff.extraTags.add(new int[] {33_421, 3, 2, 6 | 6 << 16});
    tiff.byteTags.put(33_422, pattern);
    tiff.extraTags.add(new int[] {50_706, 1, 4, 1 | 4 << 8});
    tiff.extraTags.add(new int[] {50_714, 3, 1, 512});
    PixelPlane plane = Decoding.decode(tiff.write((x, y, s) -> site(x, y))).plane();
    assertEquals(PixelPlane.Lattice.SCATTERED, plane.lattice());
    for (int y = 0; y < 60; y++) {
      for (int x = 0; x < 66; x++) {
        boolean green = cell.charAt(y % 6 * 6 + x % 6) == 'G';
        assertEquals(green ? site(x, y) - 512 : Float.NaN, plane.at(x, y), x + ", " + y);
      }
    }
  }

  @Test
  void aDngCutShortSaysBothNumbersAndNeverReachesLibRaw() {
    byte[] dng = TestTiff.dng(600, 400, "RGGB", BLACK, (x, y, s) -> site(x, y));
    String refusal = Decoding.refusal(Arrays.copyOf(dng, dng.length - 1000));
    assertTrue(refusal.contains("file holds " + (dng.length - 1000)), refusal);
  }

  @Test
  void aRawOfWhichAQuarterIsEmptyIsDamaged() {
    byte[] dng = TestTiff.dng(600, 400, "RGGB", BLACK, (x, y, s) -> y < 120 ? 0 : site(x, y));
    assertTrue(Decoding.refusal(dng).contains("30 % of the picture is empty"));
  }

  @Test
  void adviceNamesThePackageOfEachSystem() {
    assertTrue(RawSupport.advice("linux").contains("libraw-bin"));
    assertTrue(RawSupport.advice("mac os x").contains("brew install libraw"));
    assertTrue(RawSupport.advice("windows 11").contains("libraw.dll"));
  }
}
