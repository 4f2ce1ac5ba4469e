package rondure.intake;

import java.util.Optional;

/** Distance of stored pixels from what EXIF says; every answer in µm. */
final class PixelPitch {
  private static final double MICRONS_PER_MM = 1000;

  /** Diagonal of 36 mm x 24 mm, mm: what the 35 mm equivalent refers to (CIPA DCG-001). */
  private static final double FULL_FRAME_DIAGONAL_MM = Math.hypot(36, 24);

  private static final double LEAST_MICRONS = 0.4;
  private static final double MOST_MICRONS = 200;

  /** Sides of sensors in cameras, from the smallest telephones to medium format, mm. */
  private static final double LEAST_SENSOR_MM = 2;

  private static final double MOST_SENSOR_MM = 70;

  /** Rounding of the 35 mm equivalent to whole mm moves the pitch by a few per cent only. */
  private static final double AGREEMENT = 1.15;

  private static final double SAME_SHAPE = 0.02;
  private static final double SQUARE = 1.25;

  private PixelPitch() {}

  /**
   * What a file says that bears on its pixels.
   *
   * @param format RAW files hold the sensor's own pixels; others may have been resized or cut
   * @param stored size as stored
   * @param recorded size when EXIF was written; unknown when EXIF does not say
   * @param perUnitX focal-plane resolution along x, EXIF 0xA20E
   * @param perUnitY the same along y, 0xA20F
   * @param unit its unit, 0xA210
   * @param focalLengthMm actual focal length
   * @param focalLength35Mm 35 mm equivalent
   */
  record Evidence(
      ImageFormat format,
      PictureSize stored,
      PictureSize recorded,
      Optional<Double> perUnitX,
      Optional<Double> perUnitY,
      int unit,
      Optional<Double> focalLengthMm,
      Optional<Double> focalLength35Mm) {}

  /**
   * The pitch of the stored pixels: by focal-plane resolution, else by 35 mm equivalent. Empty when
   * a developed picture was cut (its shape is not the recorded one) or when both ways contradict
   * each other, since then it was resized or cut without a trace.
   */
  static Optional<Double> find(Evidence evidence) {
    boolean raw = evidence.format() == ImageFormat.RAW;
    if (!evidence.stored().known() || !raw && cut(evidence)) {
      return Optional.empty();
    }
    Optional<Double> byResolution =
        resolutionPitch(evidence)
            .map(pitch -> pitch * (raw ? 1 : shrinkage(evidence)))
            .flatMap(pitch -> fitting(pitch, evidence.stored()));
    Optional<Double> byEquivalent =
        evidence
            .focalLengthMm()
            .flatMap(
                focal ->
                    evidence
                        .focalLength35Mm()
                        .flatMap(focal35 -> ofEquivalent(focal, focal35, evidence.stored())));
    if (!raw && byResolution.isPresent() && byEquivalent.isPresent()) {
      return agree(byResolution.get(), byEquivalent.get()) ? byResolution : Optional.empty();
    }
    return byResolution.or(() -> byEquivalent);
  }

  /**
   * From the focal-plane resolution.
   *
   * @param perUnit pixels per unit
   * @param unit EXIF 0xA210: 2 inch, 3 cm; TIFF/EP (ISO 12234-2) adds 4 mm and 5 µm; others mean
   *     inch
   */
  static Optional<Double> ofResolution(double perUnit, int unit) {
    double unitMicrons =
        switch (unit) {
          case 3 -> 10_000;
          case 4 -> 1000;
          case 5 -> 1;
          default -> 25_400;
        };
    return sane(unitMicrons / perUnit);
  }

  /** From the 35 mm equivalent by the diagonal: 43.2666 mm · f / f35 over the pixel diagonal. */
  static Optional<Double> ofEquivalent(
      double focalLengthMm, double focalLength35Mm, PictureSize stored) {
    double diagonalMm = FULL_FRAME_DIAGONAL_MM * focalLengthMm / focalLength35Mm;
    return sane(MICRONS_PER_MM * diagonalMm / stored.diagonalPx());
  }

  static boolean agree(double oneMicrons, double otherMicrons) {
    double ratio = oneMicrons / otherMicrons;
    return ratio <= AGREEMENT && ratio >= 1 / AGREEMENT;
  }

  private static Optional<Double> resolutionPitch(Evidence evidence) {
    Optional<Double> x = evidence.perUnitX();
    Optional<Double> y = evidence.perUnitY();
    if (x.isPresent() && y.isPresent()) {
      double ratio = x.get() / y.get();
      if (ratio > SQUARE || ratio < 1 / SQUARE) {
        return Optional.empty();
      }
    }
    return x.or(() -> y).flatMap(perUnit -> ofResolution(perUnit, evidence.unit()));
  }

  private static boolean cut(Evidence evidence) {
    return evidence.recorded().known()
        && Math.abs(evidence.stored().aspect() / evidence.recorded().aspect() - 1) > SAME_SHAPE;
  }

  /** Recorded over stored size: how many recorded pixels one stored pixel covers, per side. */
  private static double shrinkage(Evidence evidence) {
    return evidence.recorded().known()
        ? evidence.recorded().longerPx() / (double) evidence.stored().longerPx()
        : 1;
  }

  /** The pitch, when it makes a sensor of a size that exists. */
  private static Optional<Double> fitting(double micronsPitch, PictureSize stored) {
    double sideMm = micronsPitch * stored.longerPx() / MICRONS_PER_MM;
    return sideMm >= LEAST_SENSOR_MM && sideMm <= MOST_SENSOR_MM
        ? Optional.of(micronsPitch)
        : Optional.empty();
  }

  private static Optional<Double> sane(double microns) {
    return microns >= LEAST_MICRONS && microns <= MOST_MICRONS
        ? Optional.of(microns)
        : Optional.empty();
  }
}
