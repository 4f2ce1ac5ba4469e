package rondure.intake;

import java.io.IOException;
import java.util.Map;
import rondure.base.FrameProblem;

/**
 * How the pixels of a TIFF lie in the file, checked to be something that is read.
 *
 * @param size the picture
 * @param chunkWidthPx width of a strip or tile
 * @param chunkHeightPx rows of a strip or tile
 * @param samples values per pixel, extra channels included
 * @param planar true when every colour has strips or tiles of its own
 * @param bits per sample: 8, 16 or 32
 * @param kind what the bits of a sample mean
 * @param photometric 0 grey with white at 0, 1 grey, 2 RGB
 * @param compression TIFF tag 259
 * @param predictor 1 none, 2 horizontal differences, 3 floating-point differences
 * @param tiled true for tiles
 */
record TiffLayout(
    RasterSize size,
    int chunkWidthPx,
    int chunkHeightPx,
    int samples,
    boolean planar,
    int bits,
    SampleKind kind,
    int photometric,
    int compression,
    int predictor,
    boolean tiled) {

  /** What the bits of a sample mean (TIFF tag 339). */
  enum SampleKind {
    UNSIGNED,
    SIGNED,
    FLOAT
  }

  static final int NONE = 1;
  static final int LZW = 5;
  static final int DEFLATE = 8;
  static final int PACK_BITS = 32_773;
  static final int OLD_DEFLATE = 32_946;

  private static final String ADVICE = "; export an uncompressed 16-bit TIFF";
  private static final int MOST_SAMPLES = 64;

  private static final Map<Long, String> COMPRESSIONS =
      Map.ofEntries(
          Map.entry(2L, "fax"),
          Map.entry(3L, "fax"),
          Map.entry(4L, "fax"),
          Map.entry(6L, "JPEG"),
          Map.entry(7L, "JPEG"),
          Map.entry(34_712L, "JPEG 2000"),
          Map.entry(34_887L, "LERC"),
          Map.entry(34_892L, "lossy JPEG"),
          Map.entry(34_925L, "LZMA"),
          Map.entry(50_000L, "Zstandard"),
          Map.entry(50_001L, "WebP"),
          Map.entry(52_546L, "JPEG XL"));

  private static final Map<Long, String> PHOTOMETRICS =
      Map.of(
          3L, "palette-colour",
          4L, "transparency-mask",
          5L, "CMYK",
          6L, "YCbCr",
          8L, "CIE Lab",
          9L, "ICC Lab",
          10L, "ITU Lab",
          32_845L, "LogLuv");

  /**
   * The layout that a directory describes.
   *
   * @throws FrameProblem naming what is not read
   */
  static TiffLayout of(TiffDirectory tiff) throws IOException, FrameProblem {
    RasterSize size = RasterSize.of(tiff.limits(), tiff.number(256, 0), tiff.number(257, 0));
    long samples = tiff.number(277, 1);
    long photometric = tiff.number(262, samples >= 3 ? 2 : 1);
    if (photometric < 0 || photometric > 2) {
      String name = PHOTOMETRICS.getOrDefault(photometric, "photometric " + photometric);
      throw new FrameProblem("this is a " + name + " TIFF, which is not read" + ADVICE);
    }
    if (samples < (photometric == 2 ? 3 : 1) || samples > MOST_SAMPLES) {
      throw new FrameProblem("the TIFF claims " + samples + " values per pixel; it is damaged");
    }
    long bits = bits(tiff);
    boolean tiled = tiff.has(322);
    long chunkHeight = tiled ? tiff.number(323, 0) : tiff.number(278, size.heightPx());
    TiffLayout layout =
        new TiffLayout(
            size,
            (int) Math.min(Integer.MAX_VALUE, tiled ? tiff.number(322, 0) : size.widthPx()),
            (int) Math.min(tiled ? Integer.MAX_VALUE : size.heightPx(), chunkHeight),
            (int) samples,
            tiff.number(284, 1) == 2 && samples > 1,
            (int) bits,
            kind(tiff, bits),
            (int) photometric,
            (int) compression(tiff),
            (int) tiff.number(317, 1),
            tiled);
    layout.check(tiff);
    return layout;
  }

  private static long bits(TiffDirectory tiff) throws IOException, FrameProblem {
    long[] all = tiff.numbers(258);
    long bits = all.length == 0 ? 1 : all[0];
    for (long other : all) {
      if (other != bits) {
        throw new FrameProblem("the colours of this TIFF differ in depth" + ADVICE);
      }
    }
    if (bits != 8 && bits != 16 && bits != 32) {
      throw new FrameProblem("this TIFF has " + bits + " bits per sample" + ADVICE);
    }
    return bits;
  }

  private static SampleKind kind(TiffDirectory tiff, long bits) throws IOException, FrameProblem {
    long format = tiff.number(339, 1);
    if (format == 3 && bits != 32 || format < 1 || format > 4) {
      throw new FrameProblem("this TIFF has " + bits + "-bit samples of format " + format + ADVICE);
    }
    return format == 3 ? SampleKind.FLOAT : format == 2 ? SampleKind.SIGNED : SampleKind.UNSIGNED;
  }

  private static long compression(TiffDirectory tiff) throws IOException, FrameProblem {
    long compression = tiff.number(259, 1);
    if (compression == NONE
        || compression == LZW
        || compression == DEFLATE
        || compression == OLD_DEFLATE
        || compression == PACK_BITS) {
      return compression;
    }
    String name = COMPRESSIONS.getOrDefault(compression, "method-" + compression);
    throw new FrameProblem("this is a " + name + "-compressed TIFF, which is not read" + ADVICE);
  }

  private void check(TiffDirectory tiff) throws IOException, FrameProblem {
    if (chunkWidthPx < 1
        || chunkHeightPx < 1
        || chunkWidthPx > RasterSize.LARGEST_SIDE_PX
        || chunkHeightPx > RasterSize.LARGEST_SIDE_PX) {
      throw new FrameProblem(
          "the TIFF claims pieces of "
              + chunkWidthPx
              + " x "
              + chunkHeightPx
              + " px; the file is damaged");
    }
    boolean known = predictor == 1 || predictor == 2 || predictor == 3 && kind == SampleKind.FLOAT;
    if (!known && predicted()) {
      throw new FrameProblem("this TIFF has predictor " + predictor + ADVICE);
    }
    if (tiff.number(266, 1) == 2) {
      throw new FrameProblem("this TIFF has its bits in reverse (FillOrder 2)" + ADVICE);
    }
  }

  /** True when the compression method takes a predictor. */
  boolean predicted() {
    return predictor != 1 && compression != NONE && compression != PACK_BITS;
  }

  /** Values per pixel inside one strip or tile. */
  int samplesPerChunk() {
    return planar ? 1 : samples;
  }

  int rowBytes() {
    return chunkWidthPx * samplesPerChunk() * (bits / 8);
  }

  int chunksAcross() {
    return (size.widthPx() + chunkWidthPx - 1) / chunkWidthPx;
  }

  int chunksDown() {
    return (size.heightPx() + chunkHeightPx - 1) / chunkHeightPx;
  }

  /** Bytes of the whole picture once unpacked. */
  long unpackedBytes() {
    return size.areaPx() * samples * (bits / 8);
  }
}
