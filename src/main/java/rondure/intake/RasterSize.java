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
  static final long LARGEST_AREA_PX = 400_000_000L;

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
  static RasterSize of(long widthPx, long heightPx) throws FrameProblem {
    String declared = widthPx + " x " + heightPx + " px";
    if (!acceptable(widthPx, heightPx)) {
      throw new FrameProblem(
          "the file declares "
              + declared
              + "; read are 1 to 65535 px a side and at most 400 megapixels");
    }
    long planeBytes = widthPx * heightPx * Float.BYTES;
    if (planeBytes > Runtime.getRuntime().maxMemory() / 10 * 9) {
      throw new FrameProblem(
          declared
              + " need "
              + (planeBytes >> 20)
              + " MB of memory, allowed are "
              + (Runtime.getRuntime().maxMemory() >> 20)
              + " MB");
    }
    return new RasterSize((int) widthPx, (int) heightPx);
  }

  /** Whether a picture of this size is decoded at all. */
  static boolean acceptable(long widthPx, long heightPx) {
    return widthPx >= 1
        && heightPx >= 1
        && widthPx <= LARGEST_SIDE_PX
        && heightPx <= LARGEST_SIDE_PX
        && widthPx * heightPx <= LARGEST_AREA_PX;
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
