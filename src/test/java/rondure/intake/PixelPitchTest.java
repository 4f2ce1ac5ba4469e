package rondure.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import rondure.base.FrameProblem;

class PixelPitchTest {
  private static final PictureSize FULL = new PictureSize(6000, 4000);

  private static PixelPitch.Evidence evidence(
      ImageFormat format,
      PictureSize stored,
      PictureSize recorded,
      Double perInch,
      Double focal35) {
    return new PixelPitch.Evidence(
        format,
        stored,
        recorded,
        Optional.ofNullable(perInch),
        Optional.ofNullable(perInch),
        2,
        Optional.of(16.0),
        Optional.ofNullable(focal35));
  }

  private static double jpeg(PictureSize stored, PictureSize recorded, Double perInch, Double f35) {
    return PixelPitch.find(evidence(ImageFormat.JPEG, stored, recorded, perInch, f35)).orElse(-1.0);
  }

  /** 25400 µm an inch, 10000 µm a centimetre; 4 and 5 are mm and µm in ISO 12234-2 (TIFF/EP). */
  @Test
  void resolutionGivesPitch() {
    assertEquals(4.3017, PixelPitch.ofResolution(5904.646, 2).orElseThrow(), 5e-5);
    assertEquals(4.3017, PixelPitch.ofResolution(5904.646, 1).orElseThrow(), 5e-5);
    assertEquals(4.3017, PixelPitch.ofResolution(2324.664, 3).orElseThrow(), 5e-5);
    assertEquals(4.3017, PixelPitch.ofResolution(232.4664, 4).orElseThrow(), 5e-5);
    assertEquals(4.3017, PixelPitch.ofResolution(0.2324664, 5).orElseThrow(), 5e-5);
  }

  /** Diagonal of 36 x 24 mm: 43.2666 mm; 16 mm acting like 24 mm on 6000 x 4000 px. */
  @Test
  void equivalentGivesPitchByTheDiagonal() {
    assertEquals(3.9999, PixelPitch.ofEquivalent(16, 24, FULL).orElseThrow(), 1.5e-4);
  }

  @Test
  void nonsenseGivesNoPitch() {
    assertEquals(Optional.empty(), PixelPitch.ofResolution(1e-3, 2));
    assertEquals(Optional.empty(), PixelPitch.ofResolution(1e9, 2));
    assertEquals(-1, jpeg(FULL, PictureSize.UNKNOWN, 200_000.0, null));
    assertEquals(-1, jpeg(PictureSize.UNKNOWN, PictureSize.UNKNOWN, 6350.0, 24.0));
  }

  /** 6350 px an inch are 4 µm; a copy of a quarter of the width has pixels of 16 µm. */
  @Test
  void aResizedCopyThatTellsHasAnotherPitch() {
    PictureSize quarter = new PictureSize(1500, 1000);
    assertEquals(4, jpeg(FULL, FULL, 6350.0, null), 1e-9);
    assertEquals(16, jpeg(quarter, FULL, 6350.0, null), 1e-9);
    assertEquals(16, jpeg(new PictureSize(1000, 1500), FULL, 6350.0, null), 1e-9);
    assertEquals(16, jpeg(quarter, FULL, 6350.0, 24.0), 1e-9);
    assertEquals(15.9996, jpeg(quarter, FULL, null, 24.0), 1e-3);
  }

  @Test
  void aCutCopyHasNoKnownPitch() {
    assertEquals(-1, jpeg(new PictureSize(2000, 2000), FULL, 6350.0, 24.0));
  }

  @Test
  void contradictingWaysGiveNoPitchForDevelopedFiles() {
    PictureSize quarter = new PictureSize(1500, 1000);
    assertEquals(-1, jpeg(quarter, quarter, 6350.0, 24.0));
    PixelPitch.Evidence raw = evidence(ImageFormat.RAW, FULL, quarter, 6350.0, 240.0);
    assertEquals(4, PixelPitch.find(raw).orElseThrow(), 1e-9);
  }

  @Test
  void unequalResolutionsAlongBothSidesAreNotBelieved() {
    PixelPitch.Evidence odd =
        new PixelPitch.Evidence(
            ImageFormat.JPEG,
            FULL,
            FULL,
            Optional.of(6350.0),
            Optional.of(3175.0),
            2,
            Optional.empty(),
            Optional.empty());
    assertEquals(Optional.empty(), PixelPitch.find(odd));
  }

  /** Raspberry Pi documentation, "Hardware specification": 1.12 µm at 3280 x 2464 px. */
  @Test
  void boardCamerasAreInTheTable() {
    PictureSize whole = new PictureSize(3280, 2464);
    assertEquals(1.12, SensorTable.pitchMicrons("RP_imx219", whole).orElseThrow(), 1e-12);
    PictureSize binned = new PictureSize(1640, 1232);
    assertEquals(2.24, SensorTable.pitchMicrons("Maker IMX219", binned).orElseThrow(), 1e-12);
    PictureSize square = new PictureSize(1024, 1024);
    assertEquals(Optional.empty(), SensorTable.pitchMicrons("imx219", square));
    assertEquals(Optional.empty(), SensorTable.pitchMicrons("Model X", whole));
  }

  @Test
  void theSourceOfThePitchIsNamed() throws FrameProblem {
    TestExif board = TestExif.little().ascii(0x0110, "imx219");
    assertEquals(
        new Fact<>(1.12, Fact.Source.TABLE),
        TestExif.facts(board.jpeg(3280, 2464)).pixelPitchMicrons().orElseThrow());
    TestExif exif = TestExif.little().rational(0xA20E, 2500, 1).shorts(0xA210, 3);
    assertEquals(
        new Fact<>(4.0, Fact.Source.DERIVED),
        TestExif.facts(TestExif.little().directory(TestExif.EXIF, exif).jpeg(6000, 4000))
            .pixelPitchMicrons()
            .orElseThrow());
  }

  /** The sensor does not change when its picture is resized. */
  @Property
  void pitchTimesPixelsStaysTheSensor(
      @ForAll @DoubleRange(min = 3000, max = 9000) double perInch,
      @ForAll @IntRange(min = 300, max = 6000) int width) {
    PictureSize stored = new PictureSize(width, Math.max(1, Math.round(width * 2f / 3)));
    double pitch = jpeg(stored, FULL, perInch, null);
    assertEquals(25_400 / perInch * 6000, pitch * width, 1e-6 * 6000);
  }
}
