package rondure.intake;

import rondure.base.FrameProblem;

/** Whether a compressed file can hold the picture that it declares. */
final class CompressedSize {
  /** A picture this large that packs better than 200 times is one colour: no sky, much work. */
  private static final long LARGE_BYTES = 100_000_000;

  private static final long MOST_PACKING_OF_LARGE = 200;

  /** No more bytes come out of one byte of Deflate (1032) or of TIFF's LZW (below 1400). */
  private static final long MOST_PACKING = 1500;

  /** A JPEG block of 64 px takes at least 2 bits per colour, with room for odd encoders. */
  private static final long MOST_JPEG_PX_PER_BYTE = 1000;

  private CompressedSize() {}

  /** For Deflate and LZW: refuses a picture of {@code unpackedBytes} in far too small a file. */
  static void checkPacked(RasterSize size, long unpackedBytes, long fileBytes) throws FrameProblem {
    long large = Math.max(0, unpackedBytes - LARGE_BYTES);
    long least = (unpackedBytes - large) / MOST_PACKING + large / MOST_PACKING_OF_LARGE;
    check(size, least, fileBytes);
  }

  static void checkJpeg(RasterSize size, long fileBytes) throws FrameProblem {
    check(size, size.areaPx() / MOST_JPEG_PX_PER_BYTE, fileBytes);
  }

  private static void check(RasterSize size, long least, long fileBytes) throws FrameProblem {
    if (fileBytes < least) {
      throw new FrameProblem(
          "the file declares "
              + size.widthPx()
              + " x "
              + size.heightPx()
              + " px, far more than its "
              + fileBytes
              + " bytes can hold; copy it again from the card");
    }
  }
}
