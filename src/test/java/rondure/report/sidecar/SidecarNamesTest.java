package rondure.report.sidecar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.night.Grade;

/** Which sidecars get written: those that are there, of either custom, or one new one. */
class SidecarNamesTest {
  @TempDir Path home;

  private GradedNight night() {
    return new GradedNight(home);
  }

  private void there(String... names) throws IOException {
    for (String name : names) {
      Files.createDirectories(home.resolve(name).getParent());
      Files.writeString(home.resolve(name), Packets.rated("0"));
    }
  }

  /** Every sidecar that carries our marks. */
  private List<String> marked() throws IOException {
    try (Stream<Path> all = Files.walk(home)) {
      return all.filter(Files::isRegularFile)
          .filter(file -> !file.toString().endsWith(SidecarWriter.BACKUP))
          .filter(SidecarNamesTest::isOurs)
          .map(file -> home.relativize(file).toString().replace('\\', '/'))
          .sorted()
          .toList();
    }
  }

  private static boolean isOurs(Path file) {
    try {
      return Files.readString(file).contains("Rondure keep");
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  @Test
  void aRawAndItsJpegShareOneNewSidecar() throws IOException {
    night().frame(Grade.KEEP, "a.nef", "a.jpg").beside();
    assertEquals(List.of("a.xmp"), marked());
  }

  @Test
  void theJpegOfARawInAnotherFolderGetsNone() throws IOException {
    night().frame(Grade.KEEP, "raw/a.nef", "jpg/a.jpg").beside();
    assertEquals(List.of("raw/a.xmp"), marked());
  }

  /** The JPEG was measured in the place of a damaged RAW. */
  @Test
  void theRawOfAPairIsTheOneThatCounts() throws IOException {
    night().frame(Grade.KEEP, "jpg/a.jpg", "raw/a.nef").beside();
    assertEquals(List.of("raw/a.xmp"), marked());
  }

  @Test
  void theSidecarThatIsThereIsUsedWhateverItsCustom() throws IOException {
    there("a.nef.xmp", "b.xmp");
    night().frame(Grade.KEEP, "a.nef", "a.jpg").frame(Grade.KEEP, "b.nef").beside();
    assertEquals(List.of("a.nef.xmp", "b.xmp"), marked());
  }

  @Test
  void sidecarsOfBothCustomsAndOfCopiesAreAllKeptUpToDate() throws IOException {
    there("a.nef.xmp", "a.xmp", "a.jpg.xmp", "web/a_web.xmp");
    night().frame(Grade.KEEP, "a.nef", "a.jpg", "web/a_web.jpg").beside();
    assertEquals(List.of("a.jpg.xmp", "a.nef.xmp", "a.xmp", "web/a_web.xmp"), marked());
  }

  @Test
  void aFolderWithOneCustomGetsMoreOfIt() throws IOException {
    there("one/a.nef.xmp");
    night()
        .frame(Grade.KEEP, "one/a.nef")
        .frame(Grade.KEEP, "one/b.nef")
        .frame(Grade.KEEP, "two/c.nef")
        .beside();
    assertEquals(List.of("one/a.nef.xmp", "one/b.nef.xmp", "two/c.xmp"), marked());
  }

  @Test
  void twoExposuresOfOneStemDoNotShareASidecar() throws IOException {
    night().frame(Grade.KEEP, "a.tif").frame(Grade.KEEP, "a.jpg").beside();
    assertEquals(List.of("a.jpg.xmp", "a.tif.xmp"), marked());
  }

  @Test
  void aShortNameThatTwoExposuresWouldShareIsTheRaws() throws IOException {
    there("a.xmp");
    night().frame(Grade.KEEP, "a.jpg").frame(Grade.SET_ASIDE, "a.nef").beside();
    assertEquals(List.of("a.jpg.xmp"), marked());
    assertEquals(true, Files.readString(home.resolve("a.xmp")).contains("Rondure set aside"));
  }

  @Test
  void aSidecarInCapitalsIsFound() throws IOException {
    there("A.XMP", "B.NEF.XMP");
    night().frame(Grade.KEEP, "A.NEF").frame(Grade.KEEP, "b.nef").beside();
    assertEquals(List.of("A.XMP", "B.NEF.XMP"), marked());
  }

  @Test
  void dotsAndBlanksAndOtherLettersInNamesAreLetBe() throws IOException {
    assumeFalse(
        !"UTF-8".equals(System.getProperty("sun.jnu.encoding")), "skipped: names are not UTF-8");
    night()
        .frame(Grade.KEEP, "100% dark/a.b.c.nef")
        .frame(Grade.KEEP, "night +1/Ночь ?.nef")
        .frame(Grade.KEEP, "no ending")
        .beside();
    assertEquals(List.of("100% dark/a.b.c.xmp", "night +1/Ночь ?.xmp", "no ending.xmp"), marked());
  }
}
