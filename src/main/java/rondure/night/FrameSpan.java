package rondure.night;

import java.util.function.IntUnaryOperator;

/**
 * Frames one of which something began or ended with.
 *
 * @param earliest index of the first of them
 * @param latest index of the last
 */
public record FrameSpan(int earliest, int latest) {
  public FrameSpan {
    if (earliest > latest) {
      throw new IllegalArgumentException(
          "a span ends before it starts: " + earliest + ", " + latest);
    }
  }

  /** One frame, beyond doubt. */
  static FrameSpan at(int frame) {
    return new FrameSpan(frame, frame);
  }

  /** More than the frame and its neighbour. */
  public boolean isWide() {
    return latest - earliest > 1;
  }

  /** The same frames by other indices that grow as these do. */
  FrameSpan by(IntUnaryOperator index) {
    return new FrameSpan(index.applyAsInt(earliest), index.applyAsInt(latest));
  }
}
