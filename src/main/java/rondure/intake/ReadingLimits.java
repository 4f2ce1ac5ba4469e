package rondure.intake;

/**
 * What a single file may ask for. Everything that a file only declares is held against these before
 * memory is taken or time spent; a file beyond them is listed with a sentence that says which.
 *
 * @param megapixels pixels of a frame [250: the largest cameras have 150, joined frames of them
 *     200; a frame that large takes 4 GB of heap and some ten seconds]
 * @param fileMib bytes of a file, MiB [4096: 250 megapixels of three 32-bit colours are 2861]
 * @param pieces strips or tiles of a TIFF, chunks of a PNG beyond one for each 1000 bytes [1e6:
 *     tiles of 16 x 16 px for 250 megapixels]
 * @param scanMegapixels scans of a JPEG times its megapixels [4000: 16 scans, more than usual
 *     encoders write, of 250 megapixels; a scan without content takes about 1 ms a megapixel]
 * @param metadataMib one XMP packet or colour profile once unpacked, and all EXIF values of a file
 *     together, MiB [16: as much as a sidecar may have]
 */
public record ReadingLimits(
    double megapixels, int fileMib, int pieces, int scanMegapixels, int metadataMib) {

  /** No frame beyond this is read, whatever the settings: arrays of samples stay below 2^31. */
  public static final double MEGAPIXELS_MAX = 400;

  public ReadingLimits {
    if (!(megapixels >= 1 && megapixels <= MEGAPIXELS_MAX)) {
      throw new IllegalArgumentException(
          "the largest frame must have 1 to "
              + (int) MEGAPIXELS_MAX
              + " megapixels, was "
              + megapixels);
    }
    requireWithin("fileMib", fileMib, 1 << 20);
    requireWithin("pieces", pieces, 100_000_000);
    requireWithin("scanMegapixels", scanMegapixels, 1_000_000);
    requireWithin("metadataMib", metadataMib, 256);
  }

  private static void requireWithin(String name, int value, int most) {
    if (value < 1 || value > most) {
      throw new IllegalArgumentException(name + " must be 1 to " + most + ", was " + value);
    }
  }

  public static ReadingLimits defaults() {
    return new ReadingLimits(250, 4096, 1_000_000, 4000, 16);
  }

  /** The same for frames of other sizes. */
  public ReadingLimits withMegapixels(double most) {
    return new ReadingLimits(most, fileMib, pieces, scanMegapixels, metadataMib);
  }

  long fileBytes() {
    return (long) fileMib << 20;
  }

  int metadataBytes() {
    return metadataMib << 20;
  }

  /** Chunks that a PNG of this length may have. */
  long chunks(long fileBytes) {
    return Math.min(pieces, 10_000) + fileBytes / 1000;
  }
}
