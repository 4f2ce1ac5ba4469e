package rondure.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import rondure.base.Orientation;

class CopiesTest {
  private static final LocalDateTime EVENING = LocalDateTime.of(2031, 1, 17, 22, 0, 0);

  private static Shot shot(String name, Optional<CaptureTime> time, String camera, int widthPx) {
    ImageFormat format = FileNames.format(name).orElseThrow();
    FoundFile file = new FoundFile(Path.of(name), name, format);
    ShotFacts facts =
        new ShotFacts(
            format,
            widthPx,
            widthPx * 2 / 3,
            Orientation.NORMAL,
            time,
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.ofNullable(camera).map(Fact::ofFile),
            Optional.empty(),
            false);
    return new Shot(file, facts);
  }

  private static Shot at(String name, double second, String camera) {
    long nanos = Math.round(second * 1e9);
    boolean fraction = nanos % 1_000_000_000 != 0;
    CaptureTime time =
        new CaptureTime(EVENING.plusNanos(nanos), OptionalInt.empty(), fraction, Fact.Source.FILE);
    return shot(name, Optional.of(time), camera, 6000);
  }

  private static Shot timeless(String name) {
    return shot(name, Optional.empty(), null, 6000);
  }

  /** Names of the files of each exposure, the one to measure first. */
  private static List<List<String>> grouped(Shot... shots) {
    return Copies.group(Arrays.asList(shots)).stream()
        .map(exposure -> exposure.files().stream().map(shot -> shot.file().relativeName()).toList())
        .toList();
  }

  private static List<List<String>> apart(String... names) {
    return Arrays.stream(names).map(List::of).toList();
  }

  @Test
  void rawTiffJpegAndWebSizeAreOneExposureInWhateverFolder() {
    assertEquals(
        List.of(
            List.of(
                "raw/IMG_1.CR2",
                "IMG_1.tif",
                "jpg/IMG_1.jpg",
                "web/IMG_1-edit.jpg",
                "IMG_1_web.jpg")),
        grouped(
            at("IMG_1.tif", 5, "X"),
            shot("IMG_1_web.jpg", at("a.jpg", 5, "X").facts().captureTime(), "X", 1500),
            at("jpg/IMG_1.jpg", 5, "X"),
            at("raw/IMG_1.CR2", 5, "X"),
            at("web/IMG_1-edit.jpg", 5, "X")));
  }

  @Test
  void twoCamerasCountAlike() {
    assertEquals(
        apart("a/IMG_0001.jpg", "b/IMG_0001.jpg"),
        grouped(at("a/IMG_0001.jpg", 5, "X"), at("b/IMG_0001.jpg", 5, "Y")));
  }

  @Test
  void twoNightsCountAlike() {
    assertEquals(
        apart("a/IMG_0001.jpg", "b/IMG_0001.jpg"),
        grouped(at("a/IMG_0001.jpg", 5, "X"), at("b/IMG_0001.jpg", 86_405, "X")));
  }

  @Test
  void aBurstWithinOneSecondIsNoSetOfCopies() {
    assertEquals(
        apart("IMG_1.jpg", "IMG_2.jpg", "IMG_3.jpg"),
        grouped(at("IMG_1.jpg", 5, "X"), at("IMG_2.jpg", 5, "X"), at("IMG_3.jpg", 5, "X")));
    assertEquals(
        apart("night-1.jpg", "night-2.jpg", "night (3).jpg"),
        grouped(at("night-1.jpg", 5, "X"), at("night-2.jpg", 5, "X"), at("night (3).jpg", 5, "X")));
  }

  @Test
  void aNumberBehindTheStemIsACopyWhereTheStemIsThere() {
    assertEquals(
        List.of(List.of("IMG_7.jpg", "IMG_7 (1).jpg", "IMG_7-1.jpg", "IMG_7-edit-2.jpg")),
        grouped(
            at("IMG_7.jpg", 5, "X"),
            at("IMG_7-1.jpg", 5, "X"),
            at("IMG_7 (1).jpg", 5, "X"),
            at("IMG_7-edit-2.jpg", 5, "X")));
    assertEquals(
        apart("IMG_7.jpg", "IMG_7-1.jpg"),
        grouped(at("IMG_7.jpg", 5, "X"), at("IMG_7-1.jpg", 6, "X")));
  }

  @Test
  void fractionsOfASecondTellExposuresApartWhereBothHaveThem() {
    assertEquals(
        apart("a/IMG_1.jpg", "b/IMG_1.jpg"),
        grouped(at("a/IMG_1.jpg", 5.25, "X"), at("b/IMG_1.jpg", 5.75, "X")));
    assertEquals(
        List.of(List.of("IMG_1.cr2", "IMG_1.jpg")),
        grouped(at("IMG_1.jpg", 5, "X"), at("IMG_1.cr2", 5.25, "X")));
  }

  @Test
  void anExportWithoutTheCamerasNameJoinsTheOnlyExposureOfItsTime() {
    assertEquals(
        List.of(List.of("IMG_1.cr2", "web/IMG_1.jpg")),
        grouped(at("web/IMG_1.jpg", 5, null), at("IMG_1.cr2", 5, "X")));
  }

  @Test
  void duplicatesOnTwoCardsAreOneExposure() {
    assertEquals(
        List.of(List.of("card1/IMG_1.nef", "card2/IMG_1.nef")),
        grouped(at("card2/IMG_1.nef", 5, "X"), at("card1/IMG_1.nef", 5, "X")));
  }

  @Test
  void withoutTimesOnlyFolderStemAndAnotherExtensionMakeCopies() {
    assertEquals(
        List.of(
            List.of("a/IMG_1.raf", "a/img_1.jpg"),
            List.of("b/IMG_1.jpg"),
            List.of("a/IMG_1_web.jpg")),
        grouped(
            timeless("a/img_1.jpg"),
            timeless("b/IMG_1.jpg"),
            timeless("a/IMG_1.raf"),
            timeless("a/IMG_1_web.jpg")));
    assertEquals(
        apart("a/IMG_1.jpg", "a/img_1.JPG"),
        grouped(timeless("a/IMG_1.jpg"), timeless("a/img_1.JPG")));
  }

  @Test
  void aRawWhoseFactsCouldNotBeReadFindsItsJpeg() {
    assertEquals(
        List.of(List.of("a/IMG_1.x3f", "a/IMG_1.jpg"), List.of("b/IMG_1.x3f")),
        grouped(at("a/IMG_1.jpg", 5, "X"), timeless("a/IMG_1.x3f"), timeless("b/IMG_1.x3f")));
  }

  @Test
  void largerFilesComeBeforeSmallerOnesOfTheirKind() {
    Optional<CaptureTime> time = at("a.jpg", 5, "X").facts().captureTime();
    assertEquals(
        List.of(List.of("b/IMG_1.jpg", "a/IMG_1.jpg")),
        grouped(shot("a/IMG_1.jpg", time, "X", 1500), shot("b/IMG_1.jpg", time, "X", 6000)));
  }

  @Test
  void everyFileIsInExactlyOneExposure() {
    List<Shot> shots = new ArrayList<>();
    for (int i = 0; i < 200; i++) {
      shots.add(at("a/IMG_" + i % 50 + ".jpg".repeat(1 + i / 50), i % 50, i % 3 == 0 ? null : "X"));
    }
    List<Exposure> exposures = Copies.group(shots);
    assertEquals(200, exposures.stream().mapToInt(exposure -> exposure.files().size()).sum());
    assertEquals(
        200, exposures.stream().flatMap(exposure -> exposure.files().stream()).distinct().count());
  }
}
