package rondure.sky;

import java.util.Arrays;
import java.util.List;

/**
 * Sightings of chosen frames and tracks, both numbered anew without gaps, in order of the tracks.
 * Frozen; shares its arrays within the package.
 */
final class SightingTable {

  /** Numbers that the frames had, in order. */
  final int[] frameNumbers;

  final int[] frame;
  final double[] xs;
  final double[] ys;
  final double[] errors;

  /** First sighting of each track, and the number of sightings at the end. */
  final int[] firstOfTrack;

  /**
   * @param frameNumbers of the frames, ascending
   * @param tracks the sightings of each star in those frames
   */
  SightingTable(int[] frameNumbers, List<List<Sighting>> tracks) {
    this.frameNumbers = frameNumbers;
    int count = tracks.stream().mapToInt(List::size).sum();
    frame = new int[count];
    xs = new double[count];
    ys = new double[count];
    errors = new double[count];
    firstOfTrack = new int[tracks.size() + 1];
    int next = 0;
    for (int track = 0; track < tracks.size(); track++) {
      for (Sighting one : tracks.get(track)) {
        frame[next] = Arrays.binarySearch(frameNumbers, one.frame());
        xs[next] = one.xPx();
        ys[next] = one.yPx();
        errors[next++] = one.errorPx();
      }
      firstOfTrack[track + 1] = next;
    }
  }

  int count() {
    return frame.length;
  }

  int frames() {
    return frameNumbers.length;
  }

  int tracks() {
    return firstOfTrack.length - 1;
  }

  /** The frame with the most sightings. */
  int reference() {
    int[] counts = new int[frames()];
    Arrays.stream(frame).forEach(f -> counts[f]++);
    int best = 0;
    for (int f = 1; f < counts.length; f++) {
      best = counts[f] > counts[best] ? f : best;
    }
    return best;
  }
}
