package rondure.sky;

import java.util.List;

/**
 * A frame with the earlier one it was matched to; a frame that starts a block is its own parent.
 *
 * @param frame number
 * @param parent number
 * @param block number, from 0
 * @param turn from the parent's camera axes to the frame's
 * @param pairs matched stars: the parent's, the frame's
 */
record FrameLink(int frame, int parent, int block, Rotation turn, List<int[]> pairs) {
  FrameLink {
    pairs = List.copyOf(pairs);
  }

  boolean isFirst() {
    return frame == parent;
  }

  FrameLink with(Rotation better, List<int[]> betterPairs) {
    return new FrameLink(frame, parent, block, better, betterPairs);
  }
}
