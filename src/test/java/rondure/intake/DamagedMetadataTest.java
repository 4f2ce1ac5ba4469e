package rondure.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.base.FrameProblem;

class DamagedMetadataTest {

  private static TestExif sound() {
    return TestExif.little()
        .whole(0x0100, 600)
        .whole(0x0101, 400)
        .ascii(0x0110, "Model X")
        .directory(
            TestExif.EXIF,
            TestExif.little().rational(0x829A, 20, 1).ascii(0x9003, "2031:01:17 23:58:04"));
  }

  private static String refusal(byte[] file, String ending) {
    return assertThrows(FrameProblem.class, () -> TestExif.facts(file, ending)).getMessage();
  }

  @Test
  void directoriesThatPointToEachOtherEnd() throws FrameProblem {
    TestExif main =
        TestExif.little()
            .whole(0x0100, 600)
            .whole(0x0101, 400)
            .ascii(0x0110, "Model X")
            .whole(TestExif.EXIF, 8)
            .next(8);
    assertEquals(Optional.of("Model X"), TestExif.facts(main.jpeg(600, 400)).camera());
    assertEquals(Optional.of("Model X"), TestExif.facts(main.tiff()).camera());
  }

  @Test
  void absurdCountsCostOnlyTheirOwnTag() throws FrameProblem {
    byte[] four = {1, 2, 3, 4};
    TestExif exif =
        TestExif.little()
            .raw(0x9286, 7, 0xFFFFFFFFL, four)
            .raw(0x9291, 2, 0x7FFFFFFFL, four)
            .raw(0x829D, 5, 0x20000000L, four)
            .rational(0x829A, 20, 1);
    ShotFacts facts =
        TestExif.facts(TestExif.little().directory(TestExif.EXIF, exif).jpeg(600, 400));
    assertEquals(20, facts.exposureSeconds().orElseThrow().value());
    assertEquals(Optional.empty(), facts.fNumber());
  }

  @Test
  void aCutTiffKeepsWhatCameBeforeTheCut() throws FrameProblem {
    byte[] whole = sound().tiff();
    ShotFacts facts = TestExif.facts(Arrays.copyOf(whole, whole.length - 30), ".tif");
    assertEquals(Optional.of("Model X"), facts.camera());
    assertEquals(600, facts.widthPx());
    assertEquals(Optional.empty(), facts.captureTime());
  }

  @Test
  void aJpegWithTornExifIsStillAPicture() throws FrameProblem {
    byte[] torn = "Exif\0\0II*\0\0\0".getBytes(StandardCharsets.ISO_8859_1);
    ShotFacts facts = TestExif.facts(TestExif.little().jpeg(600, 400, List.of(torn)));
    assertEquals(600, facts.widthPx());
  }

  @Test
  void whatIsNoPictureIsSaidInOneSentence() {
    byte[] text = "Dear diary, the night was clear.".getBytes(StandardCharsets.UTF_8);
    assertTrue(refusal(text, ".jpg").startsWith("is named .jpg but holds a text file"));
    assertTrue(refusal(text, ".cr2").startsWith("is named .cr2 but holds a text file"));
    assertTrue(refusal(new byte[0], ".jpg").contains("empty (0 bytes)"));
    assertTrue(refusal(new byte[100], ".png").startsWith("is named .png but holds no picture"));
    for (byte[] file : List.of(text, new byte[0], new byte[100], new byte[] {(byte) 0xFF})) {
      String sentence = refusal(file, ".jpg");
      assertFalse(sentence.contains("\n") || sentence.contains("/"), sentence);
    }
  }

  @Test
  void missingFilesAndFoldersAreSaidPlainly(@TempDir Path folder) {
    String missing =
        assertThrows(FrameProblem.class, () -> FactsReader.read(folder.resolve("no.jpg")))
            .getMessage();
    assertTrue(missing.contains("not there"), missing);
    String directory =
        assertThrows(FrameProblem.class, () -> FactsReader.read(folder)).getMessage();
    assertTrue(directory.contains("folder"), directory);
  }

  @Test
  void filesThatMayNotBeReadAreSaidPlainly(@TempDir Path folder) throws Exception {
    Path file = folder.resolve("shut.jpg");
    Files.write(file, sound().jpeg(600, 400));
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("---------"));
    assumeFalse(Files.isReadable(file), "this user may read everything");
    String shut = assertThrows(FrameProblem.class, () -> FactsReader.read(file)).getMessage();
    assertTrue(shut.contains("permissions"), shut);
  }

  /** Whatever bytes change, reading answers with facts or with a frame problem. */
  @Test
  void noDamageRaisesAnythingElse() {
    Random random = new Random(7);
    List<byte[]> files =
        List.of(
            sound().tiff(),
            sound().jpeg(600, 400),
            CanonRawTest.cr3(),
            CanonRawTest.crw(),
            FitsDecoderTest.fits(4, 3, 16, List.of("EXPTIME = 30."), (x, row) -> 1));
    int answered = 0;
    for (int turn = 0; turn < 3000; turn++) {
      byte[] file = files.get(turn % files.size()).clone();
      int reach = Math.min(file.length, 500);
      for (int i = 0; i <= random.nextInt(4); i++) {
        file[random.nextInt(reach)] = (byte) random.nextInt(256);
      }
      try {
        assertNotNull(TestExif.facts(file));
        answered++;
      } catch (FrameProblem problem) {
        assertFalse(problem.getMessage().isBlank());
      }
    }
    assertTrue(answered > 2000, "only " + answered + " answered");
  }
}
