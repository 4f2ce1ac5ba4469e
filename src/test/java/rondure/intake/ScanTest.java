package rondure.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ScanTest {
  @TempDir private Path temporary;
  private Path night;

  @BeforeEach
  void folder() throws IOException {
    night = Files.createDirectory(temporary.resolve("night"));
  }

  private Path put(String name) throws IOException {
    Path file = night.resolve(name);
    Files.createDirectories(file.getParent());
    return Files.write(file, new byte[] {1});
  }

  private static List<String> names(ScanResult result) {
    return result.files().stream().map(FoundFile::relativeName).toList();
  }

  private List<String> scanned() {
    return names(Scan.scan(List.of(night)));
  }

  @Test
  void framesComeInTheOrderInWhichPeopleCount() throws IOException {
    for (String name :
        List.of("IMG_10.JPG", "img_2.jpg", "IMG_1.CR2", "b/IMG_1.jpg", "IMG_2.tif")) {
      put(name);
    }
    assertEquals(
        List.of("b/IMG_1.jpg", "IMG_1.CR2", "img_2.jpg", "IMG_2.tif", "IMG_10.JPG"), scanned());
  }

  @Test
  void whatSystemsHideOrMakeThemselvesIsSkipped() throws IOException {
    put("a.jpg");
    put("._a.jpg");
    put(".hidden.jpg");
    put(".rondure-partial-a.xmp");
    put(".thumbnails/a.jpg");
    put("__MACOSX/._a.jpg");
    put("__MACOSX/a.jpg");
    put("@eaDir/a.jpg/SYNOPHOTO_THUMB_XL.jpg");
    put("$RECYCLE.BIN/a.jpg");
    ScanResult result = Scan.scan(List.of(night));
    assertEquals(List.of("a.jpg"), names(result));
    assertEquals(Map.of("hidden", List.of("._a.jpg", ".hidden.jpg")), result.leftOut());
    assertEquals(List.of(), result.troubles());
  }

  @Test
  void ourOwnResultsAreSkippedWhereverTheyLie() throws IOException {
    put("a.jpg");
    put("night-rondure/page.png");
    put("night-rondure/.rondure-output");
    assertEquals(List.of("a.jpg"), scanned());
  }

  @Test
  void videosAndSidecarsAreCountedWithoutComplaint() throws IOException {
    for (String name :
        List.of("a.jpg", "a.MOV", "b.mp4", "a.xml", "a.THM", "a.wav", "a.LRV", "n")) {
      put(name);
    }
    ScanResult result = Scan.scan(List.of(night));
    assertEquals(
        Map.of(
            "video",
            List.of("a.MOV", "b.mp4"),
            "sidecar",
            List.of("a.LRV", "a.THM", "a.wav", "a.xml"),
            "other",
            List.of("n")),
        result.leftOut());
    assertEquals(List.of(), result.troubles());
  }

  /** A run that writes sidecars must not change what the next run tells of the folder. */
  @Test
  void sidecarsInXmpAndTheirBackupsAreNotCounted() throws IOException {
    put("a.jpg");
    put("a.XMP");
    put("a.jpg.xmp");
    put("a.jpg.xmp.before-rondure");
    ScanResult result = Scan.scan(List.of(night));
    assertEquals(List.of("a.jpg"), names(result));
    assertEquals(Map.of(), result.leftOut());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "cr2", "cr3", "crw", "nef", "nrw", "arw", "sr2", "raf", "orf", "rw2", "pef", "dng", "srw",
        "3fr", "iiq", "rwl", "x3f", "erf", "kdc", "mos", "mef", "mrw", "dcr", "raw", "TIF", "tiff",
        "png", "jpg", "JPEG", "jpe", "fit", "fits", "fts", "heic", "heif", "hif", "avif"
      })
  void everyKindOfPictureIsKnownByItsEnding(String ending) throws IOException {
    put("frame." + ending);
    assertEquals(1, Scan.scan(List.of(night)).files().size());
  }

  @Test
  void emojiRightToLeftAndCombiningNamesAreFilesLikeOthers() throws IOException {
    List<String> names =
        List.of("\uD83C\uDF0C.jpg", "\u05DC\u05D9\u05DC\u05D4.jpg", "nuit e\u0301.jpg");
    try {
      for (String name : names) {
        put(name);
      }
    } catch (java.nio.file.InvalidPathException narrow) {
      assumeFalse(true, "this system's file names hold no such letters");
    }
    List<String> found = scanned();
    assertEquals(3, found.size());
    assertTrue(found.containsAll(names), found.toString());
  }

  @Test
  void linksThatLoopEndAndNothingIsTakenTwice() throws IOException {
    put("a.jpg");
    put("card/b.jpg");
    Files.createSymbolicLink(night.resolve("card/up"), night);
    Files.createSymbolicLink(night.resolve("self"), night.resolve("self"));
    Files.createSymbolicLink(night.resolve("other"), night.resolve("card"));
    Files.createSymbolicLink(night.resolve("z.jpg"), night.resolve("a.jpg"));
    ScanResult result = Scan.scan(List.of(night));
    assertEquals(List.of("a.jpg", "card/b.jpg"), names(result));
    assertEquals(1, result.troubles().size(), result.troubles().toString());
    assertTrue(result.troubles().get(0).startsWith("self: this link leads nowhere"));
  }

  @Test
  void aLinkToAFolderElsewhereIsFollowed() throws IOException {
    Path card = Files.createDirectory(temporary.resolve("card"));
    Files.write(card.resolve("a.jpg"), new byte[] {1});
    Files.createSymbolicLink(night.resolve("link"), card);
    assertEquals(List.of("link/a.jpg"), scanned());
  }

  @Test
  void aFolderThatMayNotBeReadIsToldAndTheRestGoesOn() throws IOException {
    put("a.jpg");
    put("shut/b.jpg");
    Path shut = night.resolve("shut");
    Files.setPosixFilePermissions(shut, PosixFilePermissions.fromString("---------"));
    try {
      assumeFalse(Files.isReadable(shut), "this user may read everything");
      ScanResult result = Scan.scan(List.of(night));
      assertEquals(List.of("a.jpg"), names(result));
      assertEquals(
          List.of("shut: this folder may not be read; change its permissions."), result.troubles());
    } finally {
      Files.setPosixFilePermissions(shut, PosixFilePermissions.fromString("rwx------"));
    }
  }

  @Test
  void namesOfSeveralFoldersStayApart() throws IOException {
    put("card1/100A/IMG_1.jpg");
    put("card2/100A/IMG_1.jpg");
    put("card3/IMG_1.jpg");
    List<Path> roots =
        List.of(night.resolve("card1/100A"), night.resolve("card2/100A"), night.resolve("card3"));
    assertEquals(
        List.of("card1/100A/IMG_1.jpg", "card2/100A/IMG_1.jpg", "card3/IMG_1.jpg"),
        names(Scan.scan(roots)));
  }

  @Test
  void aFolderGivenTwiceOrInsideAnotherIsReadOnce() throws IOException {
    put("card/a.jpg");
    Path card = night.resolve("card");
    assertEquals(1, Scan.scan(List.of(night, card, night.resolve("card/../card"))).files().size());
  }

  @Test
  void aFileGivenByNameIsTakenByItsContent() throws IOException {
    Path odd = night.resolve("frame.orig");
    Files.write(odd, TestExif.little().jpeg(6, 4));
    Path text = Files.writeString(night.resolve("notes.txt"), "clear until two");
    ScanResult result = Scan.scan(List.of(odd, text, night.resolve("gone.jpg")));
    assertEquals(List.of("frame.orig"), names(result));
    assertEquals(ImageFormat.JPEG, result.files().get(0).formatByName());
    assertEquals(2, result.troubles().size(), result.troubles().toString());
  }

  @Test
  void filesGivenByNameFromSeveralFoldersStayApart() throws IOException {
    List<Path> files = List.of(put("a/IMG_1.jpg"), put("b/IMG_1.jpg"), put("b/IMG_2.jpg"));
    assertEquals(List.of("a/IMG_1.jpg", "b/IMG_1.jpg", "IMG_2.jpg"), names(Scan.scan(files)));
  }

  @Test
  void contentDecidesOverTheName() throws Exception {
    Path wrong = night.resolve("frame.png");
    Files.write(wrong, TestExif.little().jpeg(6, 4));
    ImageFormat content = FormatSniffer.sniff(wrong).orElseThrow();
    assertEquals(ImageFormat.JPEG, content);
    FoundFile file = Scan.scan(List.of(night)).files().get(0);
    assertEquals(
        Optional.of("frame.png is named .png but holds a JPEG picture; it was read as JPEG."),
        FormatSniffer.mislabelled(file, content));
    assertEquals(Optional.empty(), FormatSniffer.mislabelled(file, ImageFormat.PNG));
  }

  /** DNGVersion, tag 50706, makes a TIFF a RAW (DNG Specification 1.6). */
  @Test
  void aTiffWithSensorValuesIsARaw() throws Exception {
    Path file = night.resolve("frame.tif");
    TestExif plain = TestExif.little().whole(0x0100, 6).whole(0x0101, 4);
    Files.write(file, plain.tiff());
    assertEquals(Optional.of(ImageFormat.TIFF), FormatSniffer.sniff(file));
    Files.write(file, plain.raw(50_706, 1, 4, new byte[] {1, 4, 0, 0}).tiff());
    assertEquals(Optional.of(ImageFormat.RAW), FormatSniffer.sniff(file));
  }

  /** The largest picture of a RAW stands in a directory below the preview's. */
  @Test
  void aRawIsAsLargeAsItsLargestPicture() throws Exception {
    TestExif sensor = TestExif.little().whole(0x0100, 6048).whole(0x0101, 4024);
    TestExif preview =
        TestExif.little()
            .whole(0x0100, 160)
            .whole(0x0101, 120)
            .raw(50_706, 1, 4, new byte[] {1, 4, 0, 0})
            .directory(TestExif.SUB_IFDS, sensor);
    ShotFacts facts = TestExif.facts(preview.tiff(), ".dng");
    assertEquals(ImageFormat.RAW, facts.format());
    assertEquals(6048, facts.widthPx());
    assertEquals(4024, facts.heightPx());
  }
}
