package rondure.intake;

import rondure.base.FrameProblem;

/**
 * Whether reading the strips or tiles of a TIFF costs no more than its pixels are worth: pieces may
 * share their bytes, be larger than the picture and come in millions, so that a small file could
 * keep the reader busy for hours.
 */
final class TiffPieces {
  /** Tiles stick out of small pictures: up to 16 times the picture, or 64 MB, are unpacked. */
  private static final int MOST_OVERHANG = 16;

  private static final long SMALL = 1L << 26;

  /** Equal pieces may be kept once; all together take no more than this many times the file. */
  private static final int MOST_SHARING = 16;

  private TiffPieces() {}

  /**
   * @param lengths what the pieces take in the file, one for each that states it
   */
  static void check(TiffLayout layout, long[] lengths, FileBytes file) throws FrameProblem {
    long pieces = (long) layout.chunksAcross() * layout.chunksDown();
    if (pieces > file.limits().pieces()) {
      throw new FrameProblem(
          "the TIFF is cut into "
              + pieces
              + " pieces; read are at most "
              + file.limits().pieces()
              + "; export it again");
    }
    long rows = Math.min(layout.chunkHeightPx(), layout.size().heightPx());
    long unpacked = pieces * rows * layout.rowBytes();
    long ownBytes = layout.unpackedBytes() / (layout.planar() ? layout.samples() : 1);
    long packed = 0;
    for (int i = 0; i < Math.min(pieces, lengths.length); i++) {
      packed += lengths[i];
    }
    if (unpacked > Math.max(SMALL, MOST_OVERHANG * ownBytes)
        || layout.compression() != TiffLayout.NONE && packed / MOST_SHARING > file.length()) {
      throw new FrameProblem(
          "the pieces of the TIFF hold far more than its "
              + layout.size().widthPx()
              + " x "
              + layout.size().heightPx()
              + " px; the file is damaged");
    }
  }
}
