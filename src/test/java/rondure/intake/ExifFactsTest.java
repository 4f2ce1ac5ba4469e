package rondure.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rondure.base.FrameProblem;
import rondure.base.Orientation;

/** Tag numbers: Exif 3.0 (CIPA DC-008), TIFF 6.0. Camera and lens are invented. */
class ExifFactsTest {

  private static TestExif night(ByteOrder order, TestExif exif) {
    return new TestExif(order)
        .ascii(0x010F, "Lumen Works")
        .ascii(0x0110, "Model X")
        .shorts(0x0112, 6)
        .directory(TestExif.EXIF, exif);
  }

  private static TestExif exposure(ByteOrder order) {
    return new TestExif(order)
        .rational(0x829A, 20, 1)
        .rational(0x829D, 28, 10)
        .shorts(0x8827, 3200)
        .ascii(0x9003, "2031:01:17 23:58:04")
        .ascii(0x9011, "+02:00")
        .ascii(0x9291, "07")
        .rational(0x920A, 24, 1)
        .signedRational(0x9400, -35, 10)
        .shorts(0xA405, 36)
        .ascii(0xA434, "Wide 24mm f/2.8");
  }

  private static ShotFacts of(TestExif exif) throws FrameProblem {
    return TestExif.facts(TestExif.little().directory(TestExif.EXIF, exif).jpeg(600, 400));
  }

  private static double value(Optional<Fact<Double>> fact) {
    return fact.orElseThrow().value();
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void everyTagArrivesInBothByteOrders(boolean little) throws FrameProblem {
    ByteOrder order = little ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN;
    ShotFacts facts = TestExif.facts(night(order, exposure(order)).jpeg(6000, 4000));
    assertEquals(ImageFormat.JPEG, facts.format());
    assertEquals(6000, facts.widthPx());
    assertEquals(4000, facts.heightPx());
    assertEquals(Orientation.ROTATED_90_CW, facts.orientation());
    assertEquals(20, value(facts.exposureSeconds()));
    assertEquals(2.8, value(facts.fNumber()), 1e-12);
    assertEquals(3200, value(facts.iso()));
    assertEquals(24, value(facts.focalLengthMm()));
    assertEquals(36, value(facts.focalLength35Mm()));
    assertEquals(-3.5, value(facts.ambientTemperatureC()), 1e-12);
    assertEquals(Fact.Source.FILE, facts.iso().orElseThrow().source());
    assertEquals(Optional.of("Lumen Works Model X"), facts.camera());
    assertEquals(Optional.of("Wide 24mm f/2.8"), facts.lens());
    assertFalse(facts.composite());
  }

  @Test
  void aTiffSaysTheSameAsAJpeg() throws FrameProblem {
    ByteOrder order = ByteOrder.LITTLE_ENDIAN;
    TestExif main = night(order, exposure(order)).whole(0x0100, 6000).whole(0x0101, 4000);
    ShotFacts tiff = TestExif.facts(main.tiff());
    ShotFacts jpeg = TestExif.facts(night(order, exposure(order)).jpeg(6000, 4000));
    assertEquals(ImageFormat.TIFF, tiff.format());
    assertEquals(jpeg.captureTime(), tiff.captureTime());
    assertEquals(jpeg.pixelPitchMicrons(), tiff.pixelPitchMicrons());
    assertEquals(6000, tiff.widthPx());
  }

  /** Digits behind the second are decimals: "07" is 0.07 s (Exif 3.0, SubSecTime). */
  @Test
  void subSecondsAndOffsetAreReadWhenPresent() throws FrameProblem {
    CaptureTime full = of(exposure(ByteOrder.LITTLE_ENDIAN)).captureTime().orElseThrow();
    assertEquals(LocalDateTime.of(2031, 1, 17, 23, 58, 4, 70_000_000), full.local());
    assertEquals(OptionalInt.of(7200), full.offsetSeconds());
    assertTrue(full.subSecondsKnown());
    CaptureTime bare =
        of(TestExif.little().ascii(0x9003, "2031:01:17 23:58:04")).captureTime().orElseThrow();
    assertEquals(OptionalInt.empty(), bare.offsetSeconds());
    assertFalse(bare.subSecondsKnown());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "0000:00:00 00:00:00",
        "    :  :     :  :  ",
        "2031:02:30 10:00:00",
        "2031:01:17",
        "yesterday",
        "2031:01:17 25:00:00"
      })
  void impossibleTimesAreUnknown(String text) throws FrameProblem {
    assertEquals(Optional.empty(), of(TestExif.little().ascii(0x9003, text)).captureTime());
  }

  /**
   * Exif 3.0, annex on APEX units: Av = 2 log2 N, Tv = -log2 t. (2.8, 20 s) gives 2.97085 and
   * -4.32193; (5.6, 1/125 s) gives 4.97085 and 6.96578.
   */
  @ParameterizedTest
  @CsvSource({"2.97085, -4.32193, 2.8, 20", "4.97085, 6.96578, 5.6, 0.008"})
  void apexValuesStandInForMissingExposures(double av, double tv, double n, double seconds)
      throws FrameProblem {
    assertEquals(n, ExifFacts.fNumberOfApex(av), 1e-5 * n);
    assertEquals(seconds, ExifFacts.secondsOfApex(tv), 1e-5 * seconds);
    ShotFacts facts =
        of(
            TestExif.little()
                .rational(0x829A, 0, 1)
                .signedRational(0x9201, Math.round(tv * 100_000), 100_000)
                .rational(0x9202, Math.round(av * 100_000), 100_000));
    assertEquals(seconds, value(facts.exposureSeconds()), 1e-5 * seconds);
    assertEquals(n, value(facts.fNumber()), 1e-5 * n);
  }

  @Test
  void exposureTimeGoesBeforeApex() throws FrameProblem {
    ShotFacts facts =
        of(TestExif.little().rational(0x829A, 32, 1).signedRational(0x9201, -4_906_891, 1_000_000));
    assertEquals(32, value(facts.exposureSeconds()));
  }

  /** A denominator of 0, or of -1 for the temperature, means unknown (Exif 3.0). */
  @Test
  void fractionsWithoutADenominatorAreUnknown() throws FrameProblem {
    ShotFacts facts =
        of(
            TestExif.little()
                .rational(0x829A, 20, 0)
                .rational(0x829D, 0, 0)
                .rational(0x920A, 0, 1)
                .signedRational(0x9400, 0, 0)
                .shorts(0xA405, 0)
                .rational(0xA20E, 1, 0)
                .shorts(0x8827, 0));
    assertEquals(
        ShotFacts.unknown(ImageFormat.JPEG).exposureSeconds(),
        facts.exposureSeconds().or(facts::fNumber).or(facts::focalLengthMm).or(facts::iso));
    assertEquals(Optional.empty(), facts.ambientTemperatureC());
    assertEquals(Optional.empty(), facts.focalLength35Mm());
    assertEquals(Optional.empty(), facts.pixelPitchMicrons());
    ShotFacts unknown = of(TestExif.little().signedRational(0x9400, 12, -1));
    assertEquals(Optional.empty(), unknown.ambientTemperatureC());
  }

  @Test
  void absurdValuesAreUnknown() throws FrameProblem {
    ShotFacts facts =
        of(
            TestExif.little()
                .rational(0x829A, 4_000_000_000L, 1)
                .rational(0x920A, 4_000_000_000L, 1)
                .signedRational(0x9400, 900, 1)
                .signedRational(0x9201, -2_000_000_000, 1));
    assertEquals(Optional.empty(), facts.exposureSeconds());
    assertEquals(Optional.empty(), facts.focalLengthMm());
    assertEquals(Optional.empty(), facts.ambientTemperatureC());
  }

  /** Exif 3.0: 1 normal, 3 upside down, 6 and 8 on a side, 2, 4, 5, 7 mirrored. */
  @ParameterizedTest
  @CsvSource({
    "1, NORMAL", "2, MIRRORED", "3, ROTATED_180", "4, FLIPPED", "5, TRANSPOSED",
    "6, ROTATED_90_CW", "7, TRANSVERSED", "8, ROTATED_270_CW", "0, NORMAL", "9, NORMAL"
  })
  void orientationValuesMeanWhatExifSays(int value, Orientation meaning) throws FrameProblem {
    assertEquals(
        meaning, TestExif.facts(TestExif.little().shorts(0x0112, value).jpeg(6, 4)).orientation());
  }

  /** SensitivityType fields of Exif 2.3 carry what 16 bits cannot. */
  @Test
  void largeIsoValuesComeFromTheirOwnField() throws FrameProblem {
    ShotFacts large = of(TestExif.little().shorts(0x8827, 65_535).whole(0x8832, 102_400));
    assertEquals(102_400, value(large.iso()));
    assertEquals(1600, value(of(TestExif.little().shorts(0x8827, 1600, 0)).iso()));
  }

  @Test
  void textIsCleanedAndBounded() throws FrameProblem {
    String long200 = "\uD83C\uDF0C".repeat(200) + "x";
    assertEquals(Optional.empty(), ExifTags.clean("\uD83C\uDF0C".repeat(200)));
    assertEquals(160, ExifTags.clean("x" + long200).orElseThrow().length() + 1);
    ShotFacts facts =
        TestExif.facts(
            TestExif.little()
                .ascii(0x0110, "  Model\u0007\u202E X\u2028\u200B  ")
                .directory(TestExif.EXIF, TestExif.little().ascii(0xA434, "----"))
                .jpeg(6, 4));
    assertEquals(Optional.of("Model X"), facts.camera());
    assertEquals(Optional.empty(), facts.lens());
    assertEquals(Optional.empty(), of(TestExif.little().ascii(0xA434, "0.0 mm f/0.0")).lens());
  }

  @Test
  void theMakerIsNamedOnce() {
    assertEquals(
        Optional.of("Lumen X1"),
        ExifFacts.named(Optional.of("LUMEN CORP."), Optional.of("Lumen X1")));
    assertEquals(Optional.of("X1"), ExifFacts.named(Optional.empty(), Optional.of("X1")));
    assertEquals(Optional.empty(), ExifFacts.named(Optional.of("LUMEN"), Optional.empty()));
  }

  @Test
  void ownerSerialNumbersAndPositionStayInTheFile() throws FrameProblem {
    TestExif exif =
        exposure(ByteOrder.LITTLE_ENDIAN)
            .ascii(0xA430, "PRIVATE owner")
            .ascii(0xA431, "PRIVATE body")
            .ascii(0xA435, "PRIVATE lens")
            .ascii(0x9286, "PRIVATE comment");
    TestExif gps = TestExif.little().ascii(0x0001, "N").rational(0x0002, 4711, 1);
    TestExif main =
        night(ByteOrder.LITTLE_ENDIAN, exif)
            .ascii(0x013B, "PRIVATE artist")
            .ascii(0x8298, "PRIVATE copyright")
            .directory(TestExif.GPS, gps);
    String said = TestExif.facts(main.jpeg(600, 400)).toString();
    assertFalse(said.contains("PRIVATE") || said.contains("4711"), said);
  }

  /** Exif 2.32: CompositeImage 0 unknown, 1 no, 2 and 3 composite. */
  @ParameterizedTest
  @CsvSource({"0, false", "1, false", "2, true", "3, true"})
  void compositesAreRecognised(int value, boolean composite) throws FrameProblem {
    assertEquals(composite, of(TestExif.little().shorts(0xA460, value)).composite());
  }

  @Test
  void photoSpheresAreCompositesUnderAnyPrefix() throws FrameProblem {
    String xmp =
        "http://ns.adobe.com/xap/1.0/\0<x:xmpmeta xmlns:x='adobe:ns:meta/'><rdf:RDF"
            + " xmlns:rdf='http://www.w3.org/1999/02/22-rdf-syntax-ns#'><rdf:Description"
            + " rdf:about='' xmlns:ball='http://ns.google.com/photos/1.0/panorama/'"
            + " ball:ProjectionType='equirectangular'/></rdf:RDF></x:xmpmeta>";
    byte[] segment = xmp.getBytes(StandardCharsets.UTF_8);
    assertTrue(TestExif.facts(TestExif.little().jpeg(600, 400, List.of(segment))).composite());
    byte[] torn = xmp.substring(0, 120).getBytes(StandardCharsets.UTF_8);
    ShotFacts facts =
        TestExif.facts(TestExif.little().shorts(0x0112, 3).jpeg(600, 400, List.of(torn)));
    assertFalse(facts.composite());
    assertEquals(Orientation.ROTATED_180, facts.orientation());
  }

  @Test
  void aResizedJpegIsAsLargeAsItsOwnHeaderSays() throws FrameProblem {
    TestExif exif = TestExif.little().whole(0xA002, 6000).whole(0xA003, 4000);
    TestExif main = TestExif.little().whole(0x0100, 6000).whole(0x0101, 4000);
    ShotFacts facts = TestExif.facts(main.directory(TestExif.EXIF, exif).jpeg(1500, 1000));
    assertEquals(1500, facts.widthPx());
    assertEquals(1000, facts.heightPx());
  }
}
