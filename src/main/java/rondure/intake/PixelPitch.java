package rondure.intake;

import java.util.Optional;

/** Distance of pixels from what EXIF says. */
final class PixelPitch {
  private static final double MICRONS_PER_INCH = 25_400;
  private static final double MICRONS_PER_CENTIMETRE = 10_000;

  /** Diagonal of 36 mm x 24 mm, mm. */
  private static final double FULL_FRAME_DIAGONAL_MM = Math.hypot(36, 24);

  private static final double LEAST_MICRONS = 0.4;
  private static final double MOST_MICRONS = 60;

  private PixelPitch() {}

  /**
   * From the focal-plane resolution (EXIF 0xA20E).
   *
   * @param perUnit pixels per unit
   * @param unit EXIF 0xA210: 2 inch, 3 cm
   */
  static Optional<Double> ofResolution(double perUnit, int unit) {
    double unitMicrons = unit == 3 ? MICRONS_PER_CENTIMETRE : MICRONS_PER_INCH;
    return sane(unitMicrons / perUnit);
  }

  /** From the 35 mm equivalent by the diagonal: 43.2666 mm · f / f35 over the pixel diagonal. */
  static Optional<Double> ofEquivalent(
      double focalLengthMm, double focalLength35Mm, int widthPx, int heightPx) {
    double diagonalMm = FULL_FRAME_DIAGONAL_MM * focalLengthMm / focalLength35Mm;
    return sane(1000 * diagonalMm / Math.hypot(widthPx, heightPx));
  }

  private static Optional<Double> sane(double microns) {
    return microns >= LEAST_MICRONS && microns <= MOST_MICRONS
        ? Optional.of(microns)
        : Optional.empty();
  }
}
