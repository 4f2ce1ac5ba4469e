package rondure.intake;

import java.io.IOException;
import rondure.base.Orientation;
import rondure.base.PixelPlane;

/**
 * Takes the linear counts of a picture piece by piece, keeps the green plane and the thumbnail's
 * cells, and makes the decoded frame of them.
 */
final class FrameAssembler {
  private final RasterSize size;
  private final ThumbnailCells cells;
  private final float[] samples;

  /**
   * @param size the picture
   * @param colour true when RED and BLUE will be given too
   */
  FrameAssembler(RasterSize size, boolean colour) {
    this.size = size;
    this.cells = new ThumbnailCells(size, colour, 1);
    this.samples = new float[(int) size.areaPx()];
  }

  /** True when the given row of this colour will be used. */
  boolean wants(Channel channel, int y) {
    return channel == Channel.GREEN || cells.colour() && cells.wants(y);
  }

  /** Takes {@code count} neighbouring values of row {@code y} from column {@code x0} on. */
  void take(Channel channel, int x0, int y, float[] values, int count) {
    if (channel == Channel.GREEN) {
      System.arraycopy(values, 0, samples, y * size.widthPx() + x0, count);
    }
    if (cells.wants(y)) {
      cells.addRow(channel, x0, y, values, count);
    }
  }

  /** The plane itself, row-major. */
  float[] samples() {
    return samples;
  }

  /** The largest value of the plane so far; 0 when none is positive. */
  double largest() {
    float largest = 0;
    for (float sample : samples) {
      if (sample > largest) {
        largest = sample;
      }
    }
    return largest;
  }

  /** Multiplies all values; what overflows becomes NaN. */
  void scale(float factor) {
    cells.scale(factor);
    for (int i = 0; i < samples.length; i++) {
      float scaled = samples[i] * factor;
      samples[i] = Float.isInfinite(scaled) ? Float.NaN : scaled;
    }
  }

  /** Subtracts a black level from the plane. */
  void subtract(float black) {
    for (int i = 0; i < samples.length; i++) {
      samples[i] -= black;
    }
  }

  DecodedFrame finish(Levels levels, Orientation orientation) throws IOException {
    return new DecodedFrame(
        PixelPlane.full(size.widthPx(), size.heightPx(), samples),
        levels.whiteCounts(),
        levels.stepCounts(),
        levels.linearity(),
        ThumbnailPainter.paint(cells, levels.stepCounts(), true, orientation));
  }
}
