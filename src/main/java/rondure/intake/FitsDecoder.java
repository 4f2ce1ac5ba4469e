package rondure.intake;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import rondure.base.FrameProblem;
import rondure.base.Orientation;

/**
 * Reads FITS pictures: 8, 16, 32 and 64 bits, whole or floating point, physical values by BSCALE
 * and BZERO (FITS Standard 4.0, section 5.3).
 *
 * <p>By convention the first row of a FITS file is the lowest of the picture, so the plane holds
 * the rows in reverse order, as the picture is displayed; a file that says {@code ROWORDER =
 * 'TOP-DOWN'} keeps its order. A raw mosaic, recognised by BAYERPAT or by its pixels, gives its
 * green photosites; BAYERPAT counts from the first row in the file. A pedestal is not subtracted:
 * FITS has no common keyword for it.
 */
final class FitsDecoder {
  private static final int MOST_HEADERS = 100;

  private final FileBytes file;
  private final FitsHeader header;
  private final FitsSamples samples;
  private final RasterSize size;
  private final boolean topDown;

  private FitsDecoder(FileBytes file, FitsHeader header) throws FrameProblem {
    this.file = file;
    this.header = header;
    this.samples = FitsSamples.of(header);
    this.size = RasterSize.of(file.limits(), header.whole("NAXIS1", 0), header.whole("NAXIS2", 0));
    this.topDown = header.text("ROWORDER").orElse("").startsWith("TOP");
    size.needs(header.dataBytes(), file.length() - header.dataOffset());
  }

  /**
   * Decodes the first picture of the file.
   *
   * @throws FrameProblem naming what is not read or what is damaged
   */
  static DecodedFrame decode(FileBytes file, Orientation orientation)
      throws IOException, FrameProblem {
    FitsDecoder decoder = new FitsDecoder(file, picture(file));
    long planes = decoder.planes();
    return planes == 3 ? decoder.colour(orientation) : decoder.single(orientation);
  }

  static FitsHeader picture(FileBytes file) throws IOException, FrameProblem {
    long offset = 0;
    for (int i = 0; i < MOST_HEADERS && offset < file.length(); i++) {
      FitsHeader header = FitsHeader.read(file, offset);
      if ("T".equals(header.text("ZIMAGE").orElse(""))) {
        throw new FrameProblem(
            "this is a tile-compressed FITS, which is not read; unpack it to a plain FITS");
      }
      boolean image = i == 0 || header.text("XTENSION").orElse("").equals("IMAGE");
      if (image && header.whole("NAXIS", 0) >= 2 && header.whole("NAXIS1", 0) > 0) {
        return header;
      }
      long blocks = (header.dataBytes() + FitsHeader.BLOCK - 1) / FitsHeader.BLOCK;
      offset = header.dataOffset() + blocks * FitsHeader.BLOCK;
    }
    throw new FrameProblem("the FITS file holds no picture");
  }

  private long planes() throws FrameProblem {
    long planes = 1;
    for (int i = 3; i <= Math.min(9, header.whole("NAXIS", 2)); i++) {
      planes *= header.whole("NAXIS" + i, 1);
    }
    if (planes != 1 && planes != 3) {
      throw new FrameProblem(
          "this FITS is a cube of " + planes + " planes; export one picture per file");
    }
    return planes;
  }

  private DecodedFrame colour(Orientation orientation) throws IOException, FrameProblem {
    FrameAssembler frame = new FrameAssembler(size, true);
    float[] row = new float[size.widthPx()];
    for (Channel channel : Channel.values()) {
      for (int i = 0; i < size.heightPx(); i++) {
        int y = topDown ? i : size.heightPx() - 1 - i;
        if (frame.wants(channel, y)) {
          readRow((long) channel.ordinal() * size.heightPx() + i, row);
          frame.take(channel, 0, y, row, row.length);
        }
      }
    }
    return frame.finish(levels(frame), orientation);
  }

  private DecodedFrame single(Orientation orientation) throws IOException, FrameProblem {
    FrameAssembler frame = new FrameAssembler(size, false);
    float[] row = new float[size.widthPx()];
    for (int i = 0; i < size.heightPx(); i++) {
      int y = topDown ? i : size.heightPx() - 1 - i;
      readRow(i, row);
      frame.take(Channel.GREEN, 0, y, row, row.length);
    }
    Levels levels = levels(frame);
    Optional<Mosaic> mosaic = mosaic(frame.samples());
    return mosaic.isPresent()
        ? greenSites(frame.samples(), mosaic.get(), levels, orientation)
        : frame.finish(levels, orientation);
  }

  private void readRow(long index, float[] row) throws IOException, FrameProblem {
    ByteBuffer bytes = ByteBuffer.allocate(row.length * samples.bytes());
    file.fill(bytes, header.dataOffset() + index * bytes.capacity());
    samples.values(bytes, row);
  }

  /** Brings floating-point data to the common white, then settles where the values end. */
  private Levels levels(FrameAssembler frame) throws FrameProblem {
    CountRange.check(frame.samples());
    double largest = frame.largest();
    Levels levels = samples.levels(header, largest);
    if (samples.floating() && levels.whiteCounts() == 1) {
      frame.scale(levels.toWhite());
      levels = levels.atWhite();
    }
    double white = ClipLevel.of(frame.samples(), levels.whiteCounts());
    return new Levels(white, levels.stepCounts(), levels.linearity());
  }

  /** The mosaic in display rows; the pixels overrule a BAYERPAT that contradicts them. */
  private Optional<Mosaic> mosaic(float[] plane) throws FrameProblem {
    OptionalInt seen = MosaicStatistics.greenParity(plane, size.widthPx(), size.heightPx());
    Optional<String> stated = header.text("BAYERPAT").or(() -> header.text("COLORTYP"));
    if (stated.isEmpty() || !stated.get().matches("RGGB|BGGR|GRBG|GBRG")) {
      refuseUnknown(header.text("BAYERPAT").orElse(""));
      return seen.isPresent()
          ? Optional.of(Mosaic.ofCell(seen.getAsInt() == 0 ? "G??G" : "?GG?"))
          : Optional.empty();
    }
    String cell = stated.get();
    int offsetX = (int) Math.floorMod(header.whole("XBAYROFF", 0), 2L);
    int offsetY = (int) Math.floorMod(header.whole("YBAYROFF", 0), 2L);
    int flip = topDown ? 0 : size.heightPx() - 1;
    Mosaic first = Mosaic.of((x, y) -> letter(cell, x + offsetX, Math.abs(flip - y) + offsetY));
    if (seen.isEmpty() || seen.getAsInt() == first.greenParity()) {
      return Optional.of(first);
    }
    return Optional.of(Mosaic.of((x, y) -> letter(cell, x + offsetX, y + flip + offsetY + 1)));
  }

  private static char letter(String cell, int x, int y) {
    return cell.charAt(2 * (y % 2) + x % 2);
  }

  private static void refuseUnknown(String pattern) throws FrameProblem {
    boolean none = pattern.isEmpty() || pattern.toLowerCase(Locale.ROOT).matches("none|mono|false");
    if (!none) {
      throw new FrameProblem(
          "the FITS has a colour mosaic of the unknown pattern "
              + pattern.substring(0, Math.min(12, pattern.length()))
              + "; export a developed 16-bit TIFF");
    }
  }

  private DecodedFrame greenSites(
      float[] plane, Mosaic mosaic, Levels levels, Orientation orientation) throws IOException {
    MosaicAssembler green = new MosaicAssembler(size, mosaic, plane);
    green.takeOwnSamples();
    return green.finish(levels, orientation);
  }
}
