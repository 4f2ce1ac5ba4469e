package rondure.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rondure.base.FrameProblem;
import rondure.base.Orientation;

class FactOverridesTest {

  private static FactOverrides lens(Double focal, Double focal35, Double pitch) {
    return new FactOverrides(
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.ofNullable(focal),
        Optional.ofNullable(focal35),
        Optional.ofNullable(pitch),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Map.of());
  }

  private static FactOverrides shifts(String... texts) {
    return new FactOverrides(
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        ClockShift.parseAll(List.of(texts)));
  }

  private static ShotFacts camera(String model, TestExif exif) throws FrameProblem {
    return TestExif.facts(
        TestExif.little()
            .ascii(0x0110, model)
            .directory(TestExif.EXIF, exif.ascii(0x9003, "2031:01:17 23:58:04"))
            .jpeg(6000, 4000));
  }

  @Test
  void nothingGivenChangesNothing() throws FrameProblem {
    ShotFacts facts = camera("Model X", TestExif.little().rational(0x829A, 20, 1));
    assertEquals(facts, FactOverrides.none().apply(facts));
  }

  @Test
  void givenFactsWinAndSayWhereTheyCameFrom() throws FrameProblem {
    FactOverrides given =
        new FactOverrides(
            Optional.of(32.0),
            Optional.of(2.0),
            Optional.of(6400.0),
            Optional.of(14.0),
            Optional.empty(),
            Optional.of(5.0),
            Optional.of(-4.0),
            Optional.of(Orientation.ROTATED_180),
            Optional.of("Model Z"),
            Optional.of("Wide 14"),
            Map.of());
    ShotFacts facts = given.apply(camera("Model X", TestExif.little().rational(0x829A, 30, 1)));
    assertEquals(Optional.of(new Fact<>(32.0, Fact.Source.OPTION)), facts.exposureSeconds());
    assertEquals(Optional.of(new Fact<>(2.0, Fact.Source.OPTION)), facts.fNumber());
    assertEquals(Optional.of(new Fact<>(6400.0, Fact.Source.OPTION)), facts.iso());
    assertEquals(Optional.of(new Fact<>(14.0, Fact.Source.OPTION)), facts.focalLengthMm());
    assertEquals(Optional.of(new Fact<>(5.0, Fact.Source.OPTION)), facts.pixelPitchMicrons());
    assertEquals(Optional.of(new Fact<>(-4.0, Fact.Source.OPTION)), facts.ambientTemperatureC());
    assertEquals(Orientation.ROTATED_180, facts.orientation());
    assertEquals(Optional.of(new Fact<>("Wide 14", Fact.Source.OPTION)), facts.lensModel());
    assertEquals(Optional.of(new Fact<>("Model X", Fact.Source.FILE)), facts.cameraModel());
    ShotFacts bare = given.apply(ShotFacts.unknown(ImageFormat.TIFF));
    assertEquals(Optional.of(new Fact<>("Model Z", Fact.Source.OPTION)), bare.cameraModel());
  }

  /** 16 mm that act like 24 mm on 6000 x 4000 px: 3.9999 µm by the diagonal of 43.2666 mm. */
  @Test
  void aGivenPairOfFocalLengthsGivesThePitch() throws FrameProblem {
    ShotFacts bare = camera("Model X", TestExif.little());
    ShotFacts given = lens(16.0, 24.0, null).apply(bare);
    assertEquals(3.9999, given.pixelPitchMicrons().orElseThrow().value(), 1.5e-4);
    assertEquals(Fact.Source.DERIVED, given.pixelPitchMicrons().orElseThrow().source());
    ShotFacts half = camera("Model X", TestExif.little().shorts(0xA405, 24));
    assertEquals(
        3.9999,
        lens(16.0, null, null).apply(half).pixelPitchMicrons().orElseThrow().value(),
        1.5e-4);
    assertEquals(Optional.empty(), lens(16.0, null, null).apply(bare).pixelPitchMicrons());
  }

  /** The file's equivalent belongs to the file's own, wrong focal length. */
  @Test
  void aCorrectedFocalLengthDoesNotChangeTheSensor() throws FrameProblem {
    TestExif wrong = TestExif.little().rational(0x920A, 50, 1).shorts(0xA405, 75);
    ShotFacts facts = camera("Model X", wrong);
    assertEquals(
        facts.pixelPitchMicrons(), lens(14.0, null, null).apply(facts).pixelPitchMicrons());
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
  void nonsenseIsRefused(double value) {
    assertThrows(IllegalArgumentException.class, () -> lens(value, null, null));
    assertThrows(IllegalArgumentException.class, () -> lens(null, null, value));
  }

  private static LocalDateTime shifted(FactOverrides shifts, String model) throws FrameProblem {
    ShotFacts facts = shifts.apply(camera(model, TestExif.little()));
    return facts.captureTime().orElseThrow().local();
  }

  @Test
  void clocksAreShiftedByModelOrPartOfIt() throws FrameProblem {
    LocalDateTime own = LocalDateTime.of(2031, 1, 17, 23, 58, 4);
    FactOverrides shifts = shifts("model x=+00:02:00", "X2=-01:00:00", "Lumen X=+00:00:01");
    assertEquals(own.plusMinutes(2), shifted(shifts, "Model X"));
    assertEquals(own.minusHours(1), shifted(shifts, "Lumen X2"));
    assertEquals(own.plusSeconds(1), shifted(shifts, "Lumen X"));
    assertEquals(own.plusMinutes(2), shifted(shifts, "Maker Model X"));
    assertEquals(own, shifted(shifts, "Other"));
  }

  @Test
  void namesThatFitNoCameraOrSeveralAreTold() {
    FactOverrides shifts = shifts("Z9000=+00:00:01", "Lumen=+00:00:01", "Lumen X2=+00:00:09");
    List<String> troubles = shifts.clockShiftTroubles(List.of("Lumen X1", "Lumen X2", "Lumen X3"));
    assertEquals(2, troubles.size(), troubles.toString());
    assertTrue(troubles.get(0).contains("Lumen X1, Lumen X3"), troubles.get(0));
    assertTrue(troubles.get(1).startsWith("No camera is called \"z9000\""), troubles.get(1));
  }

  @ParameterizedTest
  @CsvSource({
    "Model X=+01:00:00, Model X, 3600",
    "Model X=-00:00:30, Model X, -30",
    "A=B=+100:59:59, A=B, 363599",
    " spaced name =+00:00:00, spaced name, 0"
  })
  void clockShiftsAreParsed(String text, String camera, long seconds) {
    assertEquals(new ClockShift(camera, Duration.ofSeconds(seconds)), ClockShift.parse(text));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "Model X",
        "=+01:00:00",
        " =+01:00:00",
        "X=01:00:00",
        "X=+1:0:0",
        "X=+00:60:00",
        "X=+00:00:61",
        "X=+01:00",
        "X=+aa:00:00",
        "X=+-01:00:00",
        "X=+01:00:00 h"
      })
  void clockShiftsOfAnotherFormAreRefusedWithTheRightForm(String text) {
    String message =
        assertThrows(IllegalArgumentException.class, () -> ClockShift.parse(text)).getMessage();
    assertTrue(message.contains("CAMERA=+hh:mm:ss"), message);
  }

  @Test
  void aCameraTakesOneShift() {
    assertThrows(IllegalArgumentException.class, () -> shifts("X=+00:00:01", "x=+00:00:02"));
  }

  /** 4 µm from a resolution that a program left in a copy of a quarter of the width. */
  @Test
  void aPitchThatTheSetContradictsIsTakenOut() throws FrameProblem {
    TestExif exif = TestExif.little().rational(0xA20E, 2500, 1).shorts(0xA210, 3);
    TestExif main = TestExif.little().ascii(0x0110, "Model X").directory(TestExif.EXIF, exif);
    Shot full = shot("IMG_1.jpg", main.jpeg(6000, 4000));
    Shot small = shot("IMG_2.jpg", main.jpeg(1500, 1000));
    List<Shot> settled = ResizedCopies.withoutDoubtfulPitch(List.of(full, small));
    assertEquals(full, settled.get(0));
    assertEquals(Optional.empty(), settled.get(1).facts().pixelPitchMicrons());
    assertEquals(List.of(small), ResizedCopies.withoutDoubtfulPitch(List.of(small)));
    TestExif pair = TestExif.little().rational(0x920A, 16, 1).shorts(0xA405, 24);
    TestExif told = TestExif.little().ascii(0x0110, "Model X").directory(TestExif.EXIF, pair);
    Shot sound = shot("IMG_3.jpg", told.jpeg(1500, 1000));
    assertEquals(sound, ResizedCopies.withoutDoubtfulPitch(List.of(full, sound)).get(1));
  }

  /** EXIF 0xA20E, 0xA210: 2500 per cm, 4 µm; a stitched picture is larger than the sensor. */
  @Test
  void aPanoramaSaysNothingAboutThePitchOfOtherFrames() throws FrameProblem {
    TestExif exif = TestExif.little().rational(0xA20E, 2500, 1).shorts(0xA210, 3);
    TestExif main = TestExif.little().ascii(0x0110, "Model X").directory(TestExif.EXIF, exif);
    Shot frame = shot("IMG_1.jpg", main.jpeg(1500, 1000));
    Shot stitched = shot("IMG_1-2.jpg", main.jpeg(4500, 1200));
    Shot settled = ResizedCopies.withoutDoubtfulPitch(List.of(frame, stitched)).get(0);
    assertEquals(4, settled.facts().pixelPitchMicrons().orElseThrow().value(), 1e-9);
  }

  private static Shot shot(String name, byte[] file) throws FrameProblem {
    FoundFile found = new FoundFile(java.nio.file.Path.of(name), name, ImageFormat.JPEG);
    return new Shot(found, TestExif.facts(file));
  }
}
