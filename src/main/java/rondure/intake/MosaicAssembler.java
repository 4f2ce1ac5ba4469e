package rondure.intake;

import java.io.IOException;
import rondure.base.Orientation;
import rondure.base.PixelPlane;

/** Takes the photosites of a mosaic row by row, keeps the green ones and the thumbnail's cells. */
final class MosaicAssembler {
  private final RasterSize size;
  private final Mosaic mosaic;
  private final ThumbnailCells cells;
  private final float[] samples;
  private final boolean checkerboard;

  MosaicAssembler(RasterSize size, Mosaic mosaic) {
    this(size, mosaic, new float[(int) size.areaPx()]);
  }

  /** Keeps the green sites in {@code samples}, which it owns from now on. */
  MosaicAssembler(RasterSize size, Mosaic mosaic, float[] samples) {
    this.size = size;
    this.mosaic = mosaic;
    this.cells = new ThumbnailCells(size, mosaic.primaries(), mosaic.blockPx());
    this.samples = samples;
    this.checkerboard = mosaic.greenCheckerboard();
  }

  /** Takes the photosites of all rows from the samples themselves. */
  void takeOwnSamples() {
    float[] row = new float[size.widthPx()];
    for (int y = 0; y < size.heightPx(); y++) {
      System.arraycopy(samples, y * row.length, row, 0, row.length);
      take(y, row);
    }
  }

  /** Takes all photosites of row {@code y}. */
  void take(int y, float[] sites) {
    int start = y * size.widthPx();
    char[] letters = mosaic.row(y);
    if (checkerboard) {
      keepAlternate(start, (mosaic.greenParity() + y) % 2, sites);
    } else {
      for (int x = 0; x < size.widthPx(); x++) {
        samples[start + x] = letters[x % Mosaic.SIDE] == 'G' ? sites[x] : Float.NaN;
      }
    }
    if (cells.wants(y)) {
      addToCells(y, letters, sites);
    }
  }

  /** Keeps every second site, from column {@code first} on. */
  private void keepAlternate(int start, int first, float[] sites) {
    samples[start] = Float.NaN;
    for (int x = first; x < sites.length - 1; x += 2) {
      samples[start + x] = sites[x];
      samples[start + x + 1] = Float.NaN;
    }
    int last = sites.length - 1;
    if (last >= first) {
      samples[start + last] = (last - first) % 2 == 0 ? sites[last] : Float.NaN;
    }
  }

  /** Adds the blocks of a row that the cells want: whole blocks, so that no colour is missed. */
  private void addToCells(int y, char[] letters, float[] sites) {
    int block = mosaic.blockPx();
    for (int offset = 0; offset < block; offset++) {
      for (int x = offset; x < sites.length; x += block * cells.stride()) {
        char letter = letters[x % Mosaic.SIDE];
        if (letter == 'G') {
          cells.add(Channel.GREEN, x, y, sites[x]);
        } else if (cells.colour()) {
          cells.add(letter == 'R' ? Channel.RED : Channel.BLUE, x, y, sites[x]);
        }
      }
    }
  }

  /** Subtracts the black level of every green site. */
  void subtract(BlackLevels black) {
    for (int y = 0; y < size.heightPx(); y++) {
      float[] level = black.row(y);
      int start = y * size.widthPx();
      for (int x = 0; x < size.widthPx(); x += Mosaic.SIDE) {
        int count = Math.min(Mosaic.SIDE, size.widthPx() - x);
        for (int phase = 0; phase < count; phase++) {
          samples[start + x + phase] -= level[phase];
        }
      }
    }
  }

  float[] samples() {
    return samples;
  }

  DecodedFrame finish(Levels levels, Orientation orientation) throws IOException {
    PixelPlane plane =
        checkerboard
            ? PixelPlane.checkerboard(
                size.widthPx(), size.heightPx(), samples, mosaic.greenParity())
            : PixelPlane.scattered(size.widthPx(), size.heightPx(), samples);
    return new DecodedFrame(
        plane,
        levels.whiteCounts(),
        levels.stepCounts(),
        levels.linearity(),
        ThumbnailPainter.paint(cells, levels.stepCounts(), false, orientation));
  }
}
