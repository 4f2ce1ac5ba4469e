package rondure.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import rondure.base.FrameProblem;

/** Keywords and their form: FITS Standard 4.0, sections 4 and 9. */
class FitsFactsTest {

  private static byte[] file(String... cards) {
    return FitsDecoderTest.fits(6, 4, 16, List.of(cards), (x, row) -> 1);
  }

  private static ShotFacts facts(String... cards) throws FrameProblem {
    return TestExif.facts(file(cards), ".fits");
  }

  @Test
  void theHeaderGivesTheExposure() throws FrameProblem {
    ShotFacts facts =
        facts(
            "EXPTIME =             1.204D+02 / seconds",
            "DATE-OBS= '2031-01-17T23:58:04.25' / start",
            "FOCALLEN= 85.0",
            "APTDIA  = 42.5",
            "XPIXSZ  = 3.76",
            "AMBTEMP = -4.5",
            "ISOSPEED= 800",
            "INSTRUME= 'Lumen''s cam  '");
    assertEquals(ImageFormat.FITS, facts.format());
    assertEquals(6, facts.widthPx());
    assertEquals(4, facts.heightPx());
    assertEquals(120.4, facts.exposureSeconds().orElseThrow().value(), 1e-9);
    assertEquals(85, facts.focalLengthMm().orElseThrow().value());
    assertEquals(2, facts.fNumber().orElseThrow().value(), 1e-12);
    assertEquals(new Fact<>(3.76, Fact.Source.FILE), facts.pixelPitchMicrons().orElseThrow());
    assertEquals(-4.5, facts.ambientTemperatureC().orElseThrow().value());
    assertEquals(800, facts.iso().orElseThrow().value());
    assertEquals(Optional.of("Lumen's cam"), facts.camera());
    CaptureTime time = facts.captureTime().orElseThrow();
    assertEquals(LocalDateTime.of(2031, 1, 17, 23, 58, 4, 250_000_000), time.local());
    assertEquals(OptionalInt.of(0), time.offsetSeconds());
  }

  @Test
  void olderFormsOfTimeAndExposureAreRead() throws FrameProblem {
    ShotFacts facts =
        facts(
            "EXPOSURE= 30", "DATE-OBS= '2031-01-17'", "TIME-OBS= '23:58:04'", "TIMESYS = 'LOCAL'");
    assertEquals(30, facts.exposureSeconds().orElseThrow().value());
    CaptureTime time = facts.captureTime().orElseThrow();
    assertEquals(LocalDateTime.of(2031, 1, 17, 23, 58, 4), time.local());
    assertEquals(OptionalInt.empty(), time.offsetSeconds());
  }

  @Test
  void nonsenseIsUnknown() throws FrameProblem {
    ShotFacts facts =
        facts("EXPTIME = 0", "FOCALLEN= -1", "XPIXSZ  = 'big'", "DATE-OBS= '0000-00-00T00:00:00'");
    assertEquals(Optional.empty(), facts.exposureSeconds());
    assertEquals(Optional.empty(), facts.focalLengthMm());
    assertEquals(Optional.empty(), facts.pixelPitchMicrons());
    assertEquals(Optional.empty(), facts.captureTime());
  }

  @Test
  void aHeaderWithoutAnEndGivesNoFacts() throws FrameProblem {
    byte[] whole = file("EXPTIME = 30");
    assertEquals(
        ShotFacts.unknown(ImageFormat.FITS), TestExif.facts(Arrays.copyOf(whole, 400), ".fits"));
  }
}
