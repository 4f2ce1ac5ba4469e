package rondure.sky;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The paths of single stars over the frames that were linked one by one. */
final class Sightings {
  private Sightings() {}

  static List<Sighting> of(List<FrameStars> frames, List<FrameLink> links, int frameCount) {
    int[][] tracks = new int[frameCount][];
    int count = 0;
    List<Sighting> sightings = new ArrayList<>();
    for (FrameLink link : links) {
      FrameStars stars = frames.get(link.frame());
      int[] mine = new int[stars.count];
      Arrays.fill(mine, -1);
      for (int[] pair : link.pairs()) {
        int[] parents = tracks[link.parent()];
        if (parents[pair[0]] < 0) {
          parents[pair[0]] = count++;
          sightings.add(sighting(frames, link.parent(), pair[0], parents[pair[0]]));
        }
        mine[pair[1]] = parents[pair[0]];
        sightings.add(sighting(frames, link.frame(), pair[1], mine[pair[1]]));
      }
      tracks[link.frame()] = mine;
    }
    return sightings;
  }

  private static Sighting sighting(List<FrameStars> frames, int frame, int star, int track) {
    FrameStars stars = frames.get(frame);
    return new Sighting(frame, track, stars.x[star], stars.y[star], stars.errorPx[star]);
  }
}
