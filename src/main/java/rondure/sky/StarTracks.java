package rondure.sky;

import java.util.List;

/** Which measured stars of different frames are one star: a number for each, -1 for none. */
public final class StarTracks {

  /** Nothing is known. */
  public static final StarTracks NONE = new StarTracks(0, List.of());

  private final int count;
  private final int[][] byFrame;

  /**
   * @param count tracks, numbered from 0
   * @param byFrame for each frame, the track of each of its measured stars, or -1
   */
  public StarTracks(int count, List<int[]> byFrame) {
    this.count = count;
    this.byFrame = byFrame.stream().map(int[]::clone).toArray(int[][]::new);
  }

  /** Number of tracks. */
  public int count() {
    return count;
  }

  /** Track of a star, or -1: of none. */
  public int trackOf(int frame, int star) {
    return frame < byFrame.length && star < byFrame[frame].length ? byFrame[frame][star] : -1;
  }
}
