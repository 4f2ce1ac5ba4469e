package rondure.intake;

import rondure.base.FrameProblem;

/**
 * How many scans a JPEG has. Each scan of a progressive JPEG walks over the whole picture, even one
 * that adds nothing to it and takes a few bytes (ITU-T T.81, annex G), so a small file can keep a
 * decoder busy for hours.
 */
final class JpegScans {
  private static final int START_OF_SCAN = 0xDA;
  private static final int END = 0xD9;

  private JpegScans() {}

  /**
   * Refuses a picture that takes far more scans than any.
   *
   * @param jpeg the whole file
   */
  static void check(byte[] jpeg, JpegHeader header, ReadingLimits limits) throws FrameProblem {
    int scans = count(jpeg, (int) header.frameAt());
    double work = scans * (header.size().areaPx() / 1e6);
    if (work > limits.scanMegapixels()) {
      throw new FrameProblem(
          "the JPEG has "
              + scans
              + " scans of "
              + header.size().widthPx()
              + " x "
              + header.size().heightPx()
              + " px, far more than pictures have; export it again");
    }
  }

  /** Inside packed data the byte 0xFF is marked as such, so these two bytes are markers. */
  static int count(byte[] jpeg, int from) {
    int scans = 0;
    for (int i = from; i < jpeg.length - 1; i++) {
      if ((jpeg[i] & 0xFF) != 0xFF) {
        continue;
      }
      int marker = jpeg[i + 1] & 0xFF;
      if (marker == END && scans > 0) {
        return scans;
      }
      scans += marker == START_OF_SCAN ? 1 : 0;
    }
    return scans;
  }
}
