package rondure.intake;

import java.io.IOException;
import java.util.Arrays;
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
    Arrays.fill(samples, start, start + size.widthPx(), Float.NaN);
    if (checkerboard) {
      for (int x = (mosaic.greenParity() + y) % 2; x < size.widthPx(); x += 2) {
        samples[start + x] = sites[x];
      }
    } else {
      for (int x = 0; x < size.widthPx(); x++) {
        if (letters[x % Mosaic.SIDE] == 'G') {
          samples[start + x] = sites[x];
        }
      }
    }
    if (cells.wants(y)) {
      addToCells(y, letters, sites);
    }
  }

  private void addToCells(int y, char[] letters, float[] sites) {
    for (int x = 0; x < size.widthPx(); x++) {
      char letter = letters[x % Mosaic.SIDE];
      if (letter == 'G') {
        cells.add(Channel.GREEN, x, y, sites[x]);
      } else if (cells.colour()) {
        cells.add(letter == 'R' ? Channel.RED : Channel.BLUE, x, y, sites[x]);
      }
    }
  }

  /** Subtracts the black level of every green site. */
  void subtract(BlackLevels black) {
    for (int y = 0; y < size.heightPx(); y++) {
      float[] level = black.row(y);
      int start = y * size.widthPx();
      for (int x = 0, phase = 0; x < size.widthPx(); x++) {
        samples[start + x] -= level[phase];
        phase = phase + 1 == Mosaic.SIDE ? 0 : phase + 1;
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
        ThumbnailPainter.paint(cells, false, orientation));
  }
}
