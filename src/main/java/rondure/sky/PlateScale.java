package rondure.sky;

import java.util.Optional;
import rondure.intake.Fact;
import rondure.intake.ShotFacts;

/** Angle on the sky per pixel, and the focal length in pixels that a file's facts give. */
public final class PlateScale {

  /** Seconds of arc in a radian. */
  public static final double ARCSEC_PER_RAD = 648000 / Math.PI;

  /** Diagonal of the 36 × 24 mm frame that the 35 mm equivalent refers to, mm. */
  static final double DIAGONAL_35_MM = Math.hypot(36, 24);

  private PlateScale() {}

  /** Angle covered by the pixel on the optical axis, 206265″ p / f. */
  public static double arcsecPerPx(double focalLengthPx) {
    if (!(focalLengthPx > 0)) {
      throw new IllegalArgumentException("focalLengthPx must be > 0, was " + focalLengthPx);
    }
    return ARCSEC_PER_RAD / focalLengthPx;
  }

  /**
   * Focal length over pixel pitch. Without a pitch, the 35 mm equivalent and the frame's diagonal
   * give it (diagonal definition, good to the rounding of the equivalent, 2 to 4 %), provided that
   * the file holds the whole sensor.
   *
   * @param facts of one file
   * @param widthPx stored width
   * @param heightPx stored height
   */
  public static Optional<Double> focalLengthPx(ShotFacts facts, int widthPx, int heightPx) {
    Optional<Double> focalLengthMm = positive(facts.focalLengthMm());
    Optional<Double> pitchMicrons = positive(facts.pixelPitchMicrons());
    if (focalLengthMm.isPresent() && pitchMicrons.isPresent()) {
      return Optional.of(1000 * focalLengthMm.get() / pitchMicrons.get());
    }
    if (facts.composite() || widthPx <= 0 || heightPx <= 0) {
      return Optional.empty();
    }
    double diagonalPx = Math.hypot(widthPx, heightPx);
    return positive(facts.focalLength35Mm()).map(mm -> mm * diagonalPx / DIAGONAL_35_MM);
  }

  private static Optional<Double> positive(Optional<Fact<Double>> fact) {
    return fact.map(Fact::value).filter(value -> value > 0 && Double.isFinite(value));
  }
}
