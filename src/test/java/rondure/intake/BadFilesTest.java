package rondure.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rondure.base.FrameProblem;
import rondure.base.Orientation;

class BadFilesTest {

  private static byte[] text(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  @ParameterizedTest
  @CsvSource({
    "'hello, this is a diary of a night',a text file",
    "'GIF89a.........',a GIF picture",
    "'....ftypheic........mif1',HEIC",
    "'....ftypavif........mif1',AVIF",
    "'....ftypmp42........isom',a video",
    "'%PDF-1.7',a PDF document"
  })
  void whatIsNoPictureOfOursIsNamed(String start, String name) {
    String refusal = Decoding.refusal(text(start.replace('.', '\1')));
    assertTrue(refusal.contains(name), refusal);
  }

  @Test
  void emptyMissingAndFolderAreSaidPlainly(@TempDir Path folder) {
    assertTrue(Decoding.refusal(new byte[0]).contains("empty (0 bytes)"));
    ShotFacts facts = Decoding.facts(Orientation.NORMAL);
    String missing =
        assertThrows(
                FrameProblem.class,
                () ->
                    FrameDecoder.decode(
                        folder.resolve("no.tif"), facts.format(), facts.orientation()))
            .getMessage();
    assertTrue(missing.contains("not there"), missing);
    String directory =
        assertThrows(
                FrameProblem.class,
                () -> FrameDecoder.decode(folder, facts.format(), facts.orientation()))
            .getMessage();
    assertTrue(directory.contains("folder"), directory);
  }

  /** Tag 50706, DNGVersion, is in every DNG (Digital Negative Specification 1.7.1). */
  @Test
  void aTiffNamedDngIsTheTiffThatItIs(@TempDir Path folder) throws Exception {
    Path file = folder.resolve("exported.dng");
    Files.write(file, new TestTiff().write((x, y, s) -> 1000 + 100 * x + y));
    ShotFacts facts = FactsReader.read(file);
    assertEquals(ImageFormat.TIFF, facts.format());
    assertEquals(
        1302, FrameDecoder.decode(file, facts.format(), facts.orientation()).plane().at(3, 2));
    FoundFile found = new FoundFile(file, "exported.dng", ImageFormat.RAW);
    assertEquals(
        "exported.dng is named .dng but holds a TIFF picture; it was read as TIFF.",
        FormatSniffer.mislabelled(found, facts.format()).orElseThrow());
  }

  private static List<byte[]> validFiles() throws Exception {
    List<byte[]> files = new ArrayList<>();
    for (int compression : new int[] {1, 5, 8, 32_773}) {
      TestTiff tiff = new TestTiff();
      tiff.compression = compression;
      tiff.width = 40;
      tiff.height = 30;
      tiff.samples = 3;
      tiff.photometric = 2;
      tiff.profile = IccProfileTest.profile("gTRC", IccProfileTest.parametric(0, 1.8));
      tiff.predictor = compression == 8 ? 2 : 1;
      tiff.tileSide = compression == 5 ? 16 : 0;
      files.add(tiff.write((x, y, s) -> 100 * x + y));
    }
    BufferedImage picture = JpegDecoderTest.patches(BufferedImage.TYPE_3BYTE_BGR);
    files.add(PngDecoderTest.written(picture, "png"));
    files.add(PngDecoderTest.written(picture, "jpeg"));
    files.add(
        FitsDecoderTest.fits(
            40, 30, 16, List.of("BAYERPAT= 'RGGB'", "BZERO   = 32768"), (x, row) -> x * row));
    return files;
  }

  /** Headers are hit more often than pixels: half of the changes fall into the first 400 bytes. */
  private static byte[] mutated(byte[] file, Random random) {
    byte[] copy = file.clone();
    int changes = 1 + random.nextInt(4);
    for (int i = 0; i < changes; i++) {
      int reach = random.nextBoolean() ? Math.min(400, copy.length) : copy.length;
      int at = random.nextInt(reach);
      copy[at] = (byte) (random.nextBoolean() ? random.nextInt(256) : random.nextInt(2) * 255);
    }
    return random.nextInt(4) == 0 ? Arrays.copyOf(copy, random.nextInt(copy.length)) : copy;
  }

  @Test
  void damageNeverRaisesAnythingButAFrameProblem() throws Exception {
    Random random = new Random(20_260_101);
    int refused = 0;
    for (byte[] file : validFiles()) {
      Decoding.decode(file);
      for (int i = 0; i < 120; i++) {
        byte[] damaged = mutated(file, random);
        if (FileKindOf.tiffWithSensorData(damaged)) {
          continue;
        }
        try {
          Decoding.decode(damaged);
        } catch (FrameProblem problem) {
          refused++;
          assertFalse(problem.getMessage().isBlank());
          assertFalse(problem.getMessage().contains("\n"), problem.getMessage());
        }
      }
    }
    assertTrue(refused > 300, "refused only " + refused);
  }

  /** A damaged TIFF may turn into a RAW, which belongs to LibRaw and so to a worker process. */
  private static final class FileKindOf {
    private FileKindOf() {}

    static boolean tiffWithSensorData(byte[] file) throws Exception {
      Path path = java.nio.file.Files.createTempFile("kind", ".bin");
      java.nio.file.Files.write(path, file);
      try (FileBytes bytes = FileBytes.open(path, ReadingLimits.defaults())) {
        return file.length > 0 && FileKind.of(bytes, ImageFormat.TIFF) == FileKind.RAW;
      } catch (FrameProblem problem) {
        return false;
      } finally {
        java.nio.file.Files.delete(path);
      }
    }
  }
}
