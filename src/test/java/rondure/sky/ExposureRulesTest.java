package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rondure.intake.Fact;
import rondure.intake.ImageFormat;
import rondure.intake.ShotFacts;

class ExposureRulesTest {

  /** Worked values printed in popular texts on the 500 rule: 500/20 and 500/50. */
  @Test
  void theFiveHundredRuleGivesItsPublishedExamples() {
    assertEquals(25, ExposureRules.constantRuleSeconds(500, 20), 1e-12);
    assertEquals(10, ExposureRules.constantRuleSeconds(500, 50), 1e-12);
  }

  /** ω K on the sensor, whatever the focal length (closed form, computed independently). */
  @ParameterizedTest
  @CsvSource({
    "300, 21.876, 3.646, 5.088",
    "400, 29.168, 4.861, 6.783",
    "500, 36.461, 6.077, 8.479",
    "600, 43.753, 7.292, 10.175"
  })
  void theConstantRuleAllowsTheSameTrailAtAnyFocalLength(
      double constant, double microns, double pxAt6, double pxAt43) {
    for (double focalMm : new double[] {14, 24, 50}) {
      double seconds = ExposureRules.constantRuleSeconds(constant, focalMm);
      assertEquals(microns, ExposureRules.trailPx(seconds, focalMm, 1, 0), 0.002);
      assertEquals(pxAt6, ExposureRules.trailPx(seconds, focalMm, 6, 0), 0.002);
      assertEquals(pxAt43, ExposureRules.trailPx(seconds, focalMm, 4.3, 0), 0.002);
    }
  }

  /**
   * Values computed from the published formulas (F. Michaud, Société Astronomique du Havre); he
   * prints no worked example.
   */
  @ParameterizedTest
  @CsvSource({
    "2.8, 4.3, 24, 9.458, 4.523, 9.046, 1.841",
    "2.8, 5.94, 14, 19.729, 9.289, 18.578, 1.597",
    "1.8, 4.3, 20, 9.600, 4.565, 9.130, 1.548",
    "2.0, 3.9, 50, 3.740, 1.844, 3.687, 1.724",
    "4.0, 3.76, 135, 1.873, 0.981, 1.962, 2.569"
  })
  void theNpfRuleGivesItsFormulaValues(
      double fNumber,
      double pitch,
      double focal,
      double simple,
      double full,
      double fullAt60,
      double trailPx) {
    assertEquals(simple, ExposureRules.npfSimpleSeconds(fNumber, pitch, focal), 0.002);
    double seconds = ExposureRules.npfSeconds(1, fNumber, pitch, focal, 0);
    assertEquals(full, seconds, 0.002);
    assertEquals(fullAt60, ExposureRules.npfSeconds(1, fNumber, pitch, focal, 60), 0.002);
    assertEquals(trailPx, ExposureRules.trailPx(seconds, focal, pitch, 0), 0.002);
  }

  /** His page prints the coefficients rounded to 16.9, 0.10 and 13.7. */
  @Test
  void roundedCoefficientsAgreeToAThirdOfAPercent() {
    double rounded = (16.9 * 2.8 + 0.10 * 24 + 13.7 * 4.3) / 24;
    assertEquals(rounded, ExposureRules.npfSeconds(1, 2.8, 4.3, 24, 0), 0.003 * rounded);
  }

  /** cos 60° = 1/2: degrees must be turned into radians, not the other way round. */
  @Test
  void sixtyDegreesOfDeclinationDoubleTheNpfTimeExactly() {
    double equator = ExposureRules.npfSeconds(1, 2.8, 4.3, 24, 0);
    assertEquals(2, ExposureRules.npfSeconds(1, 2.8, 4.3, 24, 60) / equator, 1e-12);
    assertEquals(2, ExposureRules.npfSeconds(1, 2.8, 4.3, 24, -60) / equator, 1e-12);
    assertEquals(3, ExposureRules.npfSeconds(3, 2.8, 4.3, 24, 0) / equator, 1e-12);
  }

  /** 206265″ × 6 µm / 24 mm; 1″ is 0.0194 px there. */
  @Test
  void thePlateScaleIsPitchOverFocalLength() {
    assertEquals(51.566, PlateScale.arcsecPerPx(4000), 0.001);
    assertEquals(0.0194, 1 / PlateScale.arcsecPerPx(4000), 1e-4);
  }

  /** f = 16 mm, 35 mm equivalent 24 mm, 6000 × 4000: p = 3.9999 µm by the diagonal definition. */
  @Test
  void the35MmEquivalentGivesTheFocalLengthInPixels() {
    ShotFacts facts = withEquivalent(24);
    double focalPx = PlateScale.focalLengthPx(facts, 6000, 4000).orElseThrow();
    assertEquals(3.9999, 16000 / focalPx, 0.0005);
    assertEquals(
        Optional.empty(),
        PlateScale.focalLengthPx(ShotFacts.unknown(ImageFormat.JPEG), 6000, 4000));
  }

  private static ShotFacts withEquivalent(double mm) {
    ShotFacts none = ShotFacts.unknown(ImageFormat.JPEG);
    return new ShotFacts(
        none.format(),
        6000,
        4000,
        none.orientation(),
        none.captureTime(),
        none.exposureSeconds(),
        none.fNumber(),
        none.iso(),
        none.focalLengthMm(),
        Optional.of(new Fact<>(mm, Fact.Source.FILE)),
        none.pixelPitchMicrons(),
        none.ambientTemperatureC(),
        none.cameraModel(),
        none.lensModel(),
        false);
  }

  @Test
  void impossibleInputIsRefusedByName() {
    assertThrows(
        IllegalArgumentException.class, () -> ExposureRules.npfSeconds(1, 2.8, 4.3, 24, 90));
    assertThrows(
        IllegalArgumentException.class, () -> ExposureRules.constantRuleSeconds(500, Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> ExposureRules.npfSimpleSeconds(0, 4.3, 24));
  }
}
