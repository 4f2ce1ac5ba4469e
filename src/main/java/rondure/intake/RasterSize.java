package rondure.intake;

import rondure.base.FrameProblem;

/**
 * The size of a picture that is worth allocating memory for.
 *
 * @param widthPx columns, 1 to 65535
 * @param heightPx rows, 1 to 65535
 */
record RasterSize(int widthPx, int heightPx) {
  static final int LARGEST_SIDE_PX = 65_535;
  static final long LARGEST_AREA_PX = (long) (ReadingLimits.MEGAPIXELS_MAX * 1e6);

  RasterSize {
    if (!acceptable(widthPx, heightPx)) {
      throw new IllegalArgumentException(widthPx + " x " + heightPx + " px are out of range");
    }
  }

  /**
   * The size a file declares.
   *
   * @throws FrameProblem when a side or the area is out of range, or memory could not hold a plane
   */
  static RasterSize of(ReadingLimits limits, long widthPx, long heightPx) throws FrameProblem {
    String declared = widthPx + " x " + heightPx + " px";
    if (!acceptable(widthPx, heightPx) || widthPx * heightPx > limits.megapixels() * 1e6) {
      throw new FrameProblem(
          "the file declares "
              + declared
              + "; read are 1 to 65535 px a side and at most "
              + Math.round(limits.megapixels())
              + " megapixels");
    }
    RasterSize size = new RasterSize((int) widthPx, (int) heightPx);
    size.fitsBeside(0);
    return size;
  }

  /** Whether a picture of this size is decoded at all. */
  static boolean acceptable(long widthPx, long heightPx) {
    return widthPx >= 1
        && heightPx >= 1
        && widthPx <= LARGEST_SIDE_PX
        && heightPx <= LARGEST_SIDE_PX
        && widthPx * heightPx <= LARGEST_AREA_PX;
  }

  /**
   * Refuses a frame whose plane has no room in memory beside so many bytes.
   *
   * @param bytes what else is held at the same time, such as the picture as a library unpacks it
   */
  void fitsBeside(long bytes) throws FrameProblem {
    long needed = areaPx() * Float.BYTES + bytes;
    long allowed = Runtime.getRuntime().maxMemory();
    if (needed > allowed / 10 * 9) {
      throw new FrameProblem(
          widthPx
              + " x "
              + heightPx
              + " px need "
              + (needed >> 20)
              + " MB of memory, allowed are "
              + (allowed >> 20)
              + " MB");
    }
  }

  long areaPx() {
    return (long) widthPx * heightPx;
  }

  /**
   * Refuses a file that is too short for uncompressed pixels of this size.
   *
   * @param bytes what the pixels take in the file
   * @param available what the file holds from the pixels' start on
   */
  void needs(long bytes, long available) throws FrameProblem {
    if (bytes > available) {
      throw new FrameProblem(
          widthPx
              + " x "
              + heightPx
              + " px need "
              + bytes
              + " bytes, file holds "
              + Math.max(0, available)
              + "; copy it again from the card");
    }
  }
}
