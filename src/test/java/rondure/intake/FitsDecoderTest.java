package rondure.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rondure.base.FrameProblem;
import rondure.base.PixelPlane;

class FitsDecoderTest {

  /** Stored value at column x of row {@code row}, rows counted as they lie in the file. */
  interface Stored {
    double at(int x, int row);
  }

  /** A FITS file by FITS Standard 4.0: cards of 80 characters, blocks of 2880 bytes. */
  static byte[] fits(int width, int height, int bitpix, List<String> more, Stored stored) {
    StringBuilder cards = new StringBuilder();
    for (String card :
        List.of(
            "SIMPLE  =                    T",
            "BITPIX  = " + bitpix,
            "NAXIS   = 2",
            "NAXIS1  = " + width,
            "NAXIS2  = " + height + " / rows")) {
      cards.append(String.format("%-80s", card));
    }
    more.forEach(card -> cards.append(String.format("%-80s", card)));
    cards.append(String.format("%-80s", "END"));
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(padded(cards.toString().getBytes(StandardCharsets.US_ASCII), (byte) ' '));
    ByteBuffer data = ByteBuffer.allocate(width * height * Math.abs(bitpix) / 8);
    for (int i = 0; i < width * height; i++) {
      double value = stored.at(i % width, i / width);
      switch (bitpix) {
        case 8 -> data.put((byte) value);
        case 16 -> data.putShort((short) value);
        case 32 -> data.putInt((int) value);
        case -32 -> data.putFloat((float) value);
        default -> data.putDouble(value);
      }
    }
    out.writeBytes(padded(data.array(), (byte) 0));
    return out.toByteArray();
  }

  private static byte[] padded(byte[] bytes, byte with) {
    byte[] blocks = Arrays.copyOf(bytes, (bytes.length + 2879) / 2880 * 2880);
    Arrays.fill(blocks, bytes.length, blocks.length, with);
    return blocks;
  }

  @ParameterizedTest
  @ValueSource(ints = {8, 16, 32, -32, -64})
  void everyDepthIsExactAndTheLastRowOfTheFileIsOnTop(int bitpix) throws FrameProblem {
    DecodedFrame frame =
        Decoding.decode(fits(5, 3, bitpix, List.of(), (x, row) -> 20 * row + x + 30));
    for (int y = 0; y < 3; y++) {
      for (int x = 0; x < 5; x++) {
        assertEquals(20 * (2 - y) + x + 30, frame.plane().at(x, y));
      }
    }
    assertEquals(Linearity.TAGGED, frame.linearity());
    assertEquals(bitpix > 0 ? 1 : 0, frame.codeStepCounts());
  }

  @Test
  void topDownFilesKeepTheirRows() throws FrameProblem {
    List<String> topDown = List.of("ROWORDER= 'TOP-DOWN'");
    DecodedFrame frame = Decoding.decode(fits(2, 4, 16, topDown, (x, row) -> 10 * row));
    assertEquals(30, frame.plane().at(0, 3));
  }

  @Test
  void unsignedSixteenBitsByBzeroReachThe65535() throws FrameProblem {
    List<String> zero = List.of("BZERO   = 32768", "BSCALE  = 1.0");
    DecodedFrame frame =
        Decoding.decode(fits(3, 1, 16, zero, (x, row) -> x == 0 ? -32_768 : 32_767));
    assertEquals(0, frame.plane().at(0, 0));
    assertEquals(65_535, frame.plane().at(1, 0));
    assertEquals(65_535, frame.whiteLevelCounts());
  }

  @Test
  void scaleAndBlankAreApplied() throws FrameProblem {
    List<String> cards = List.of("BZERO   = 100", "BSCALE  = 0.5", "BLANK   = 7");
    DecodedFrame frame = Decoding.decode(fits(9, 1, 32, cards, (x, row) -> x));
    assertEquals(103, frame.plane().at(6, 0));
    assertTrue(Float.isNaN(frame.plane().at(7, 0)));
    assertEquals(0.5, frame.codeStepCounts());
  }

  @Test
  void fractionsOfOneAreScaledToWhite() throws FrameProblem {
    DecodedFrame frame = Decoding.decode(fits(4, 1, -32, List.of(), (x, row) -> x / 4.0));
    assertEquals(65_535 * 0.75, frame.plane().at(3, 0), 0.01);
    assertEquals(65_535, frame.whiteLevelCounts());
  }

  @Test
  void statedSaturationIsWhite() throws FrameProblem {
    List<String> cards = List.of("SATURATE= 15800");
    DecodedFrame frame = Decoding.decode(fits(4, 4, 16, cards, (x, row) -> 100 * x));
    assertEquals(15_800, frame.whiteLevelCounts());
  }

  @ParameterizedTest
  @CsvSource({"RGGB,1", "BGGR,1", "GRBG,0", "GBRG,0"})
  void mosaicGivesItsGreenSites(String cell, int parity) throws FrameProblem {
    for (List<String> cards :
        List.of(
            List.of("ROWORDER= 'TOP-DOWN'", "BAYERPAT= '" + cell + "'"),
            List.of("ROWORDER= 'TOP-DOWN'"))) {
      Random random = new Random(5);
      Stored sky =
          (x, row) -> {
            char letter = cell.charAt(2 * (row % 2) + x % 2);
            double level = letter == 'G' ? 1000 : letter == 'R' ? 700 : 860;
            return Math.round(level + 30 * random.nextGaussian());
          };
      PixelPlane plane = Decoding.decode(fits(80, 60, 16, cards, sky)).plane();
      assertEquals(PixelPlane.Lattice.CHECKERBOARD, plane.lattice());
      assertEquals(parity, plane.parity());
      assertEquals(1000, plane.at(parity, 0), 200);
      assertTrue(Float.isNaN(plane.at(1 - parity, 0)));
    }
  }

  @Test
  void monochromeNoiseAndUnequalColumnsAreNoMosaic() throws FrameProblem {
    Random random = new Random(6);
    Stored noise = (x, row) -> Math.round(1000 + 30 * random.nextGaussian());
    Stored columns = (x, row) -> Math.round(1000 + 40 * (x % 2) + 30 * random.nextGaussian());
    Stored gradient = (x, row) -> Math.round(1000 + 3 * x + row + 30 * random.nextGaussian());
    for (Stored stored : List.of(noise, columns, gradient)) {
      PixelPlane plane = Decoding.decode(fits(80, 60, 16, List.of(), stored)).plane();
      assertEquals(PixelPlane.Lattice.EVERY_PIXEL, plane.lattice());
    }
  }

  @Test
  void truncatedAndOddHeadersAreRefused() {
    byte[] whole = fits(100, 100, 16, List.of(), (x, row) -> x);
    String refusal = Decoding.refusal(Arrays.copyOf(whole, 2880 + 5000));
    assertTrue(refusal.contains("100 x 100 px need 20000 bytes, file holds 5000"), refusal);
    assertTrue(
        Decoding.refusal(fits(9, 9, 16, List.of("ZIMAGE  = T"), (x, row) -> x))
            .contains("compressed FITS"));
    assertTrue(
        Decoding.refusal(fits(99_999, 1, 8, List.of(), (x, row) -> x)).contains("99999 x 1"));
  }
}
