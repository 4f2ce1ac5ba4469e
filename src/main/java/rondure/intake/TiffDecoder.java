package rondure.intake;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Optional;
import java.util.zip.Inflater;
import java.util.zip.InflaterInputStream;
import java.util.zip.ZipException;
import rondure.base.FrameProblem;
import rondure.base.Orientation;

/**
 * Reads developed TIFFs row by row, straight into the green plane.
 *
 * <p>Neither of the readers at hand covers what exporters write: the JDK's knows horizontal
 * differences for 8 bits only and no floating-point predictor, ImageJ's knows no tiles. So strips
 * and tiles are read here, and only one row of the file is held at a time.
 */
final class TiffDecoder {
  private static final int ICC_PROFILE = 34_675;
  private static final int INFLATE_BUFFER = 1 << 16;

  private final FileBytes file;
  private final TiffDirectory tiff;
  private final TiffLayout layout;
  private final Developed developed;
  private final FrameAssembler frame;
  private final CodeScale scale;
  private final TiffRow row;
  private final float[] codes;

  private TiffDecoder(FileBytes file, TiffDirectory tiff) throws IOException, FrameProblem {
    this.file = file;
    this.tiff = tiff;
    this.layout = TiffLayout.of(tiff);
    checkLength();
    TiffPieces.check(layout, tiff.numbers(layout.tiled() ? 325 : 279), file);
    byte[] profile = tiff.bytes(ICC_PROFILE);
    Optional<ToneCurve> tagged = profile.length == 0 ? Optional.empty() : IccProfile.curve(profile);
    this.developed = Developed.of(tagged, profile.length > 0, layout.bits());
    this.frame = new FrameAssembler(layout.size(), layout.photometric() == 2);
    this.scale = scale();
    this.row = new TiffRow(layout, tiff.order());
    this.codes = new float[layout.chunkWidthPx()];
  }

  /**
   * Decodes the first full-size picture of the file.
   *
   * @throws FrameProblem naming what is not read or what is damaged
   */
  static DecodedFrame decode(FileBytes file, Orientation orientation)
      throws IOException, FrameProblem {
    TiffDecoder decoder = new TiffDecoder(file, fullSize(TiffDirectory.chain(file)));
    decoder.readChunks();
    return decoder.finish(orientation);
  }

  /** The first directory that is not marked as a reduced copy; else the first of all. */
  private static TiffDirectory fullSize(List<TiffDirectory> chain)
      throws IOException, FrameProblem {
    for (TiffDirectory directory : chain) {
      if ((directory.number(254, 0) & 1) == 0 && directory.has(256)) {
        return directory;
      }
    }
    return chain.get(0);
  }

  private void checkLength() throws FrameProblem {
    if (layout.compression() == TiffLayout.NONE) {
      layout.size().needs(layout.unpackedBytes(), file.length());
    } else {
      CompressedSize.checkPacked(layout.size(), layout.unpackedBytes(), file.length());
    }
  }

  /** Whole numbers of 8 and 16 bits are scaled on the way, others once their range is known. */
  private CodeScale scale() {
    boolean unsigned = layout.kind() == TiffLayout.SampleKind.UNSIGNED;
    boolean inverted = layout.photometric() == 0;
    if (late()) {
      return new CodeScale(ToneCurve.LINEAR, CodeScale.WHITE_COUNTS, false, false);
    }
    if (layout.kind() == TiffLayout.SampleKind.FLOAT) {
      return new CodeScale(developed.curve(), 1, false, inverted);
    }
    double largest = Math.pow(2, unsigned ? layout.bits() : layout.bits() - 1) - 1;
    return new CodeScale(developed.curve(), largest, unsigned, inverted);
  }

  /** True when white is only known from the data: linear values of 32 bits. */
  private boolean late() {
    return layout.bits() == 32
        && layout.photometric() != 0
        && developed.curve() == ToneCurve.LINEAR;
  }

  private void readChunks() throws IOException, FrameProblem {
    long[] offsets = tiff.numbers(layout.tiled() ? 324 : 273);
    long[] lengths = tiff.numbers(layout.tiled() ? 325 : 279);
    int perPlane = layout.chunksAcross() * layout.chunksDown();
    int planes = layout.planar() ? layout.samples() : 1;
    if (offsets.length < (long) perPlane * planes) {
      throw new FrameProblem(
          "the TIFF lists "
              + offsets.length
              + " of "
              + (long) perPlane * planes
              + " pieces; the file is damaged");
    }
    int measured = layout.planar() ? (layout.photometric() == 2 ? 3 : 1) : 1;
    for (int i = 0; i < perPlane * measured; i++) {
      int rows = Math.min(layout.chunkHeightPx(), layout.size().heightPx() - top(i % perPlane));
      long packed =
          layout.compression() == TiffLayout.NONE
              ? (long) rows * layout.rowBytes()
              : i < lengths.length ? lengths[i] : file.length() - offsets[i];
      readChunk(i / perPlane, i % perPlane, file.slice(offsets[i], packed));
    }
  }

  private int top(int chunk) {
    return chunk / layout.chunksAcross() * layout.chunkHeightPx();
  }

  private void readChunk(int plane, int chunk, InputStream packed)
      throws IOException, FrameProblem {
    int left = chunk % layout.chunksAcross() * layout.chunkWidthPx();
    int top = top(chunk);
    int bottom = Math.min(layout.size().heightPx(), top + layout.chunkHeightPx());
    int y = top;
    try (InputStream in = unpacked(packed)) {
      for (; y < bottom; y++) {
        if (in.readNBytes(row.bytes(), 0, row.bytes().length) < row.bytes().length) {
          throw new EOFException();
        }
        row.decode();
        take(plane, left, y);
      }
    } catch (EOFException | ZipException damage) {
      throw new FrameProblem(
          "the picture is damaged or cut short at row "
              + y
              + " of "
              + layout.size().heightPx()
              + "; copy or export it again",
          damage);
    }
  }

  private InputStream unpacked(InputStream packed) {
    return switch (layout.compression()) {
      case TiffLayout.LZW -> new LzwStream(packed);
      case TiffLayout.DEFLATE, TiffLayout.OLD_DEFLATE -> inflated(packed);
      case TiffLayout.PACK_BITS -> new PackBitsStream(packed);
      default -> packed;
    };
  }

  private static InputStream inflated(InputStream packed) {
    Inflater inflater = new Inflater();
    return new InflaterInputStream(packed, inflater, INFLATE_BUFFER) {
      @Override
      public void close() throws IOException {
        super.close();
        inflater.end();
      }
    };
  }

  private void take(int plane, int left, int y) {
    int pixels = Math.min(layout.chunkWidthPx(), layout.size().widthPx() - left);
    if (layout.photometric() != 2) {
      take(Channel.GREEN, 0, left, y, pixels);
    } else if (layout.planar()) {
      take(Channel.values()[plane], 0, left, y, pixels);
    } else {
      for (Channel channel : Channel.values()) {
        take(channel, channel.ordinal(), left, y, pixels);
      }
    }
  }

  private void take(Channel channel, int sample, int left, int y, int pixels) {
    if (frame.wants(channel, y)) {
      row.codes(sample, codes, pixels);
      scale.toCounts(codes, pixels);
      frame.take(channel, left, y, codes, pixels);
    }
  }

  private DecodedFrame finish(Orientation orientation) throws IOException, FrameProblem {
    if (layout.kind() != TiffLayout.SampleKind.UNSIGNED) {
      CountRange.check(frame.samples());
    }
    if (!late()) {
      double step = layout.kind() == TiffLayout.SampleKind.FLOAT ? 0 : scale.stepCounts();
      Levels levels = new Levels(CodeScale.WHITE_COUNTS, step, developed.linearity());
      return frame.finish(levels, orientation);
    }
    Levels levels = lateLevels(frame.largest());
    if (levels.whiteCounts() != CodeScale.WHITE_COUNTS) {
      frame.scale(levels.toWhite());
    }
    return frame.finish(levels.atWhite(), orientation);
  }

  private Levels lateLevels(double largest) {
    return switch (layout.kind()) {
      case FLOAT -> Levels.ofFloats(largest, developed.linearity());
      case SIGNED -> wide(largest, Integer.MAX_VALUE);
      default -> wide(largest, 0xFFFFFFFFL);
    };
  }

  /** 32-bit whole numbers often hold 16-bit counts. */
  private Levels wide(double largest, double full) {
    double white = largest <= CodeScale.WHITE_COUNTS ? CodeScale.WHITE_COUNTS : full;
    return new Levels(white, 1, developed.linearity());
  }
}
