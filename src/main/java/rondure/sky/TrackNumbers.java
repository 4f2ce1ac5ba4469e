package rondure.sky;

import java.util.Arrays;
import java.util.List;

/** Numbers the stars that were measured in more than one frame over the blocks of a scene. */
final class TrackNumbers {
  private final List<FrameStars> frames;
  private final int[][] tracks;
  private int trackCount;

  TrackNumbers(List<SkyShot> shots, List<FrameStars> frames) {
    this.frames = frames;
    this.tracks = new int[shots.size()][];
    for (int i = 0; i < tracks.length; i++) {
      tracks[i] = new int[shots.get(i).field().stars().size()];
      Arrays.fill(tracks[i], -1);
    }
  }

  StarTracks tracks() {
    return new StarTracks(trackCount, Arrays.asList(tracks));
  }

  /** Takes the stars of a block's map over. */
  void add(SkyMap map) {
    int[] seen = measuredCounts(map);
    int[] renumbered = new int[seen.length];
    for (int star = 0; star < seen.length; star++) {
      renumbered[star] = seen[star] >= 2 ? trackCount++ : -1;
    }
    for (int i = 0; i < frames.size(); i++) {
      int[] numbers = map.tracks(i).orElse(new int[0]);
      FrameStars stars = frames.get(i);
      for (int j = 0; j < numbers.length; j++) {
        if (stars.measured[j] >= 0) {
          tracks[i][stars.measured[j]] = renumbered[numbers[j]];
        }
      }
    }
  }

  /** In how many frames each star of a block's map was measured. */
  private int[] measuredCounts(SkyMap map) {
    int[] counts = new int[map.starCount()];
    for (int i = 0; i < frames.size(); i++) {
      int[] numbers = map.tracks(i).orElse(new int[0]);
      for (int j = 0; j < numbers.length; j++) {
        counts[numbers[j]] += frames.get(i).measured[j] >= 0 ? 1 : 0;
      }
    }
    return counts;
  }
}
