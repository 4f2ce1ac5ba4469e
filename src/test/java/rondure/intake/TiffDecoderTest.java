package rondure.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import rondure.base.FrameProblem;

class TiffDecoderTest {

  private static int pattern(int x, int y, int sample) {
    return (x * 7919 + y * 104_729 + sample * 15_485_863 + 12_345) * 31;
  }

  /** Every depth, layout, compression, predictor and byte order that exporters write. */
  static List<String> layouts() {
    List<String> all = new ArrayList<>();
    for (String depth : List.of("8u", "16u", "16s", "32u", "32f")) {
      for (int samples : new int[] {1, 3, 4}) {
        for (String packing : List.of("1/1", "5/1", "5/2", "8/1", "8/2", "8/3", "32773/1")) {
          for (String place : List.of("strips", "tiles", "planar-strips", "planar-tiles")) {
            boolean needsFloat = packing.endsWith("/3");
            boolean needsColour = place.startsWith("planar");
            if ((!needsFloat || depth.equals("32f")) && (!needsColour || samples > 1)) {
              all.add(depth + " " + samples + " " + packing + " " + place);
            }
          }
        }
      }
    }
    return all;
  }

  @ParameterizedTest
  @MethodSource("layouts")
  void everyLayoutGivesItsGreenOrGreySamplesExactly(String layout) throws FrameProblem {
    for (ByteOrder order : List.of(ByteOrder.LITTLE_ENDIAN, ByteOrder.BIG_ENDIAN)) {
      TestTiff tiff = parsed(layout);
      tiff.order = order;
      int green = tiff.samples == 1 ? 0 : 1;
      DecodedFrame frame = Decoding.decode(tiff.write((x, y, s) -> word(tiff, x, y, s)));
      for (int y = 0; y < tiff.height; y++) {
        for (int x = 0; x < tiff.width; x++) {
          double wanted = counts(tiff, word(tiff, x, y, green));
          assertEquals(wanted, frame.plane().at(x, y), Math.abs(wanted) * 2e-7, layout);
        }
      }
    }
  }

  static TestTiff parsed(String layout) {
    String[] parts = layout.split("[ /]");
    TestTiff tiff = new TestTiff();
    tiff.width = 19;
    tiff.height = 21;
    tiff.bits = Integer.parseInt(parts[0].replaceAll("[a-z]", ""));
    tiff.format = parts[0].endsWith("f") ? 3 : parts[0].endsWith("s") ? 2 : 1;
    tiff.samples = Integer.parseInt(parts[1]);
    tiff.photometric = tiff.samples >= 3 ? 2 : 1;
    tiff.compression = Integer.parseInt(parts[2]);
    tiff.predictor = Integer.parseInt(parts[3]);
    tiff.planar = parts[4].startsWith("planar");
    tiff.tileSide = parts[4].endsWith("tiles") ? 16 : 0;
    return tiff;
  }

  static int word(TestTiff tiff, int x, int y, int sample) {
    if (tiff.format == 3) {
      return Float.floatToRawIntBits(Math.floorMod(pattern(x, y, sample), 1000) / 999f);
    }
    int word = pattern(x, y, sample);
    return tiff.bits == 32 ? word : word & (1 << tiff.bits) - 1;
  }

  /** The definition of the counts, from the bits, without the decoder's tables. */
  private static double counts(TestTiff tiff, int word) {
    if (tiff.format == 3) {
      return 65_535.0 * Float.intBitsToFloat(word);
    }
    if (tiff.format == 2) {
      return (short) word / 32_767.0 * 65_535;
    }
    return switch (tiff.bits) {
      case 8 -> 65_535 * ToneCurve.SRGB.light(word / 255.0);
      case 16 -> word;
      default -> (word & 0xFFFFFFFFL) / 65_537.0;
    };
  }

  /** The JDK's own TIFF writer as an independent encoder, with a real LZW dictionary. */
  @ParameterizedTest
  @ValueSource(strings = {"LZW", "ZLib", "Deflate", "PackBits"})
  void filesOfTheJdkWriterComeBackExactly(String compression) throws IOException, FrameProblem {
    BufferedImage picture = new BufferedImage(301, 207, BufferedImage.TYPE_USHORT_GRAY);
    for (int y = 0; y < 207; y++) {
      for (int x = 0; x < 301; x++) {
        picture.getRaster().setSample(x, y, 0, 700 + (x / 5 * y) % 37 * 50);
      }
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageWriter writer = ImageIO.getImageWritersByFormatName("tiff").next();
    try (MemoryCacheImageOutputStream stream = new MemoryCacheImageOutputStream(out)) {
      writer.setOutput(stream);
      ImageWriteParam param = writer.getDefaultWriteParam();
      param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      param.setCompressionType(compression);
      writer.write(null, new IIOImage(picture, null, null), param);
    }
    DecodedFrame frame = Decoding.decode(out.toByteArray());
    for (int y = 0; y < 207; y++) {
      for (int x = 0; x < 301; x++) {
        assertEquals(picture.getRaster().getSample(x, y, 0), frame.plane().at(x, y));
      }
    }
  }

  @Test
  void sixteenBitsWithoutProfileAreTakenAsLinear() throws FrameProblem {
    DecodedFrame frame = Decoding.decode(new TestTiff().write((x, y, s) -> 100 * x));
    assertEquals(Linearity.ASSUMED, frame.linearity());
    assertEquals(65_535, frame.whiteLevelCounts());
    assertEquals(1, frame.codeStepCounts(), 1e-9);
  }

  @Test
  void eightBitsLoseTheSrgbCurve() throws FrameProblem {
    TestTiff tiff = new TestTiff();
    tiff.bits = 8;
    DecodedFrame frame = Decoding.decode(tiff.write((x, y, s) -> x == 0 ? 188 : 5));
    assertEquals(Linearity.DEVELOPED, frame.linearity());
    // IEC 61966-2-1: code 188 is 0.5029 of white; the toe has slope 1 / 12.92.
    assertEquals(0.5029, frame.plane().at(0, 0) / frame.whiteLevelCounts(), 1e-4);
    assertEquals(frame.whiteLevelCounts() / 255 / 12.92, frame.codeStepCounts(), 0.01);
  }

  @Test
  void whiteIsZeroIsInverted() throws FrameProblem {
    TestTiff tiff = new TestTiff();
    tiff.photometric = 0;
    DecodedFrame frame = Decoding.decode(tiff.write((x, y, s) -> 1000 + x));
    assertEquals(65_535 - 1003, frame.plane().at(3, 0));
  }

  @Test
  void floatsBeyondOneAreCountsAndNotFractions() throws FrameProblem {
    TestTiff tiff = new TestTiff();
    tiff.bits = 32;
    tiff.format = 3;
    DecodedFrame frame =
        Decoding.decode(
            tiff.write((x, y, s) -> Float.floatToIntBits(x == 6 ? Float.NaN : 900.25f * x - 3)));
    assertEquals(900.25f * 5 - 3, frame.plane().at(5, 2));
    assertEquals(-3f, frame.plane().at(0, 2));
    assertTrue(Float.isNaN(frame.plane().at(6, 2)));
    assertEquals(65_535, frame.whiteLevelCounts());
  }

  @ParameterizedTest
  @CsvSource({"1,1", "1,9", "9,1", "3,3"})
  void oddAndTinySizesAreRead(int width, int height) throws FrameProblem {
    TestTiff tiff = new TestTiff();
    tiff.width = width;
    tiff.height = height;
    DecodedFrame frame = Decoding.decode(tiff.write((x, y, s) -> 10 * x + y));
    assertEquals(10 * (width - 1) + height - 1, frame.plane().at(width - 1, height - 1));
  }

  @ParameterizedTest
  @CsvSource({
    "7,1,JPEG-compressed TIFF",
    "50000,1,Zstandard-compressed TIFF",
    "1,5,CMYK TIFF",
    "1,6,YCbCr TIFF",
    "1,3,palette-colour TIFF"
  })
  void whatIsNotReadIsRefusedByName(int compression, int photometric, String name) {
    TestTiff tiff = new TestTiff();
    tiff.compression = compression;
    tiff.photometric = photometric;
    String refusal = Decoding.refusal(tiff.write((x, y, s) -> x));
    assertTrue(refusal.contains(name) && refusal.contains("16-bit TIFF"), refusal);
  }

  @Test
  void aFileTooShortForItsPixelsSaysBothNumbers() {
    TestTiff tiff = new TestTiff();
    tiff.width = 600;
    tiff.height = 400;
    tiff.rowsPerStrip = 400;
    byte[] whole = tiff.write((x, y, s) -> x);
    String refusal = Decoding.refusal(java.util.Arrays.copyOf(whole, 362_250));
    assertTrue(refusal.contains("600 x 400 px need 480000 bytes, file holds 362250"), refusal);
  }

  @Test
  void absurdDimensionsAreRefusedBeforeMemoryIsTaken() {
    TestTiff tiff = new TestTiff();
    tiff.width = 70_000;
    tiff.height = 1;
    assertTrue(Decoding.refusal(tiff.write((x, y, s) -> 0)).contains("70000 x 1 px"));
  }
}
