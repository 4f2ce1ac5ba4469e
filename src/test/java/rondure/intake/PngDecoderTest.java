package rondure.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.zip.CRC32;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rondure.base.FrameProblem;

class PngDecoderTest {

  private static byte[] chunk(String name, byte[] data) {
    ByteBuffer bytes = ByteBuffer.allocate(12 + data.length);
    bytes.putInt(data.length).put(name.getBytes(StandardCharsets.US_ASCII)).put(data);
    CRC32 sum = new CRC32();
    sum.update(bytes.array(), 4, 4 + data.length);
    bytes.putInt((int) sum.getValue());
    return bytes.array();
  }

  /** A PNG (ISO/IEC 15948) of unfiltered rows. */
  private static byte[] png(int[] widthHeightBitsType, byte[] extra, byte[] rows) {
    ByteBuffer header = ByteBuffer.allocate(13);
    header.putInt(widthHeightBitsType[0]).putInt(widthHeightBitsType[1]);
    header.put((byte) widthHeightBitsType[2]).put((byte) widthHeightBitsType[3]);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(new byte[] {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'});
    out.writeBytes(chunk("IHDR", header.array()));
    out.writeBytes(extra);
    out.writeBytes(chunk("IDAT", TestTiff.deflated(rows)));
    out.writeBytes(chunk("IEND", new byte[0]));
    return out.toByteArray();
  }

  /** Grey 16 bits, 3 x 2 px, values 1000 (x + 10 y + 1). */
  private static byte[] grey16(byte[] extra) {
    ByteBuffer rows = ByteBuffer.allocate(2 * 7);
    for (int y = 0; y < 2; y++) {
      rows.put((byte) 0);
      for (int x = 0; x < 3; x++) {
        rows.putShort((short) (1000 * (x + 10 * y + 1)));
      }
    }
    return png(new int[] {3, 2, 16, 0}, extra, rows.array());
  }

  /** 3000 x 3000 px of one bit are 1.1 MB, and Deflate packs 1032 bytes of them into one. */
  @Test
  void anEmptyPictureOfOneBitPacksIntoAFewHundredBytes() throws Exception {
    byte[] file = png(new int[] {3000, 3000, 1, 0}, new byte[0], new byte[3000 * (1 + 375)]);
    assertTrue(file.length < 3000, file.length + " bytes");
    assertEquals(3000, Decoding.decode(file).plane().widthPx());
  }

  static byte[] written(BufferedImage picture, String format) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    assertTrue(javax.imageio.ImageIO.write(picture, format, out));
    return out.toByteArray();
  }

  @Test
  void sixteenBitGreyIsExactAndTakenAsLinear() throws FrameProblem {
    DecodedFrame frame = Decoding.decode(grey16(new byte[0]));
    assertEquals(12_000, frame.plane().at(1, 1));
    assertEquals(Linearity.ASSUMED, frame.linearity());
    assertEquals(1, frame.codeStepCounts(), 1e-9);
  }

  @Test
  void sixteenBitColourGivesGreen() throws FrameProblem {
    ByteBuffer row = ByteBuffer.allocate(2 * (1 + 8));
    for (int y = 0; y < 2; y++) {
      row.put((byte) 0).putShort((short) 1).putShort((short) (40_000 + y));
      row.putShort((short) 3).putShort((short) -1);
    }
    DecodedFrame frame = Decoding.decode(png(new int[] {1, 2, 16, 6}, new byte[0], row.array()));
    assertEquals(40_001, frame.plane().at(0, 1));
  }

  @ParameterizedTest
  @ValueSource(ints = {BufferedImage.TYPE_BYTE_GRAY, BufferedImage.TYPE_3BYTE_BGR})
  void eightBitsLoseTheSrgbCurve(int type) throws IOException, FrameProblem {
    BufferedImage picture = new BufferedImage(256, 2, type);
    for (int x = 0; x < 256; x++) {
      for (int band = 0; band < picture.getRaster().getNumBands(); band++) {
        picture.getRaster().setSample(x, 1, band, band == 1 || type == 10 ? x : 9);
      }
    }
    DecodedFrame frame = Decoding.decode(written(picture, "png"));
    for (int x = 0; x < 256; x++) {
      double wanted = 65_535 * ToneCurve.SRGB.light(x / 255.0);
      assertEquals(wanted, frame.plane().at(x, 1), 0.01);
    }
    assertEquals(Linearity.DEVELOPED, frame.linearity());
  }

  @Test
  void greyPaletteAndFewBitsAreReadAsEightBits() throws FrameProblem {
    byte grey = (byte) 188;
    byte[] palette = chunk("PLTE", new byte[] {0, 0, 0, grey, grey, grey});
    byte[] indexed = png(new int[] {2, 1, 8, 3}, palette, new byte[] {0, 0, 1});
    assertEquals(0.5029 * 65_535, Decoding.decode(indexed).plane().at(1, 0), 10);
    byte[] fourBits = png(new int[] {2, 1, 4, 0}, new byte[0], new byte[] {0, (byte) 0x0F});
    assertEquals(65_535, Decoding.decode(fourBits).plane().at(1, 0), 0.1);
  }

  /** At most 256 colours for the whole picture made stars of an outside simulator 27 % too wide. */
  @Test
  void aPaletteOfColoursIsRefusedByName() {
    byte[] palette = chunk("PLTE", new byte[] {9, 0, 9, 9, (byte) 188, 9});
    String refusal = Decoding.refusal(png(new int[] {2, 1, 8, 3}, palette, new byte[] {0, 0, 1}));
    assertTrue(refusal.startsWith("this is a palette-colour PNG"), refusal);
  }

  @ParameterizedTest
  @CsvSource({"100000,1.0", "45455,2.2", "55556,1.8"})
  void gammaChunkIsUndone(int coded, double exponent) throws FrameProblem {
    byte[] gamma = chunk("gAMA", ByteBuffer.allocate(4).putInt(coded).array());
    DecodedFrame frame = Decoding.decode(grey16(gamma));
    double wanted = 65_535 * Math.pow(13_000 / 65_535.0, exponent);
    assertEquals(wanted, frame.plane().at(2, 1), 0.005 * wanted);
    assertEquals(Linearity.TAGGED, frame.linearity());
  }

  @Test
  void srgbChunkIsUndoneAndTheProfileOverrulesIt() throws FrameProblem {
    byte[] srgb = chunk("sRGB", new byte[1]);
    double wanted = 65_535 * ToneCurve.SRGB.light(13_000 / 65_535.0);
    assertEquals(wanted, Decoding.decode(grey16(srgb)).plane().at(2, 1), 0.005 * wanted);
    byte[] profile = IccProfileTest.profile("kTRC", IccProfileTest.parametric(0, 1));
    ByteArrayOutputStream both = new ByteArrayOutputStream();
    both.writeBytes(new byte[] {'x', 0, 0});
    both.writeBytes(TestTiff.deflated(profile));
    byte[] linear = chunk("iCCP", both.toByteArray());
    assertEquals(13_000, Decoding.decode(grey16(linear)).plane().at(2, 1), 0.01);
  }

  @Test
  void aPartialPictureIsRefused() throws IOException {
    byte[] whole = written(new BufferedImage(300, 200, BufferedImage.TYPE_BYTE_GRAY), "png");
    for (int length = 8; length < whole.length; length += 7) {
      Decoding.refusal(Arrays.copyOf(whole, length));
    }
  }

  @Test
  void aWrongCheckSumIsRefused() {
    byte[] file = grey16(new byte[0]);
    file[file.length - 20] ^= 1;
    assertTrue(Decoding.refusal(file).contains("check sum"));
  }

  @Test
  void absurdDimensionsAreRefused() {
    byte[] file = png(new int[] {60_000, 6_000, 16, 2}, new byte[0], new byte[10]);
    assertTrue(Decoding.refusal(file).contains("60000 x 6000"), Decoding.refusal(file));
  }
}
