package rondure.intake;

import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import rondure.base.FrameProblem;

/**
 * How the sensor values of a RAW that is built like a TIFF are packed (TIFF tag 259; values of the
 * Adobe Digital Negative Specification 1.7.1, section "Compression").
 *
 * @param lossy true when the values went through a lossy JPEG of 8 bits
 * @param unusual the name of a method that not every LibRaw reads
 */
record RawPacking(boolean lossy, Optional<String> unusual) {
  /** Nothing out of the ordinary, or nothing known. */
  static final RawPacking USUAL = new RawPacking(false, Optional.empty());

  private static final int COMPRESSION = 259;
  private static final int SAMPLE_FORMAT = 339;
  private static final int FLOATING_POINT = 3;
  private static final long LOSSY_JPEG = 34_892;
  private static final Map<Long, String> UNUSUAL =
      Map.of(8L, "Deflate", LOSSY_JPEG, "lossy JPEG", 52_546L, "JPEG XL");

  /**
   * The packing that a directory with sensor values states.
   *
   * @throws FrameProblem for floating-point values, which LibRaw may hand over as if they were
   *     whole numbers
   */
  static RawPacking of(TiffDirectory sensor) throws IOException, FrameProblem {
    if (sensor.number(SAMPLE_FORMAT, 1) == FLOATING_POINT) {
      throw new FrameProblem(
          "this is a floating-point DNG, which is not read; export a linear 16-bit TIFF");
    }
    long compression = sensor.number(COMPRESSION, 1);
    return new RawPacking(compression == LOSSY_JPEG, Optional.ofNullable(UNUSUAL.get(compression)));
  }

  /** What to say when LibRaw fails: the method, where that explains it. */
  FrameProblem explain(FrameProblem failure) {
    return unusual
        .map(
            name ->
                new FrameProblem(
                    "this DNG is packed with "
                        + name
                        + ", which the LibRaw found here could not unpack; install a newer LibRaw,"
                        + " or export a linear 16-bit TIFF",
                    failure))
        .orElse(failure);
  }
}
