package rondure.blur;

import java.util.Arrays;

/**
 * Magnitudes of stars in frames, one entry for each time a star was measured, in plain arrays.
 *
 * <p>Places are in halves of the frame's diagonal from its centre, x right, y down.
 */
final class StarLight {
  private static final int FIRST_ROOM = 1024;

  final int frames;
  final int stars;
  private int size;
  int[] frame = new int[FIRST_ROOM];
  int[] star = new int[FIRST_ROOM];
  double[] x = new double[FIRST_ROOM];
  double[] y = new double[FIRST_ROOM];
  double[] magnitude = new double[FIRST_ROOM];
  double[] error = new double[FIRST_ROOM];

  StarLight(int frames, int stars) {
    this.frames = frames;
    this.stars = stars;
  }

  int size() {
    return size;
  }

  /** Where and how bright a star was in one frame. */
  record Seen(double x, double y, double magnitude, double errorMag) {}

  void add(int inFrame, int ofStar, Seen seen) {
    if (size == frame.length) {
      grow(2 * size);
    }
    frame[size] = inFrame;
    star[size] = ofStar;
    x[size] = seen.x();
    y[size] = seen.y();
    magnitude[size] = seen.magnitude();
    error[size] = seen.errorMag();
    size++;
  }

  private void grow(int room) {
    frame = Arrays.copyOf(frame, room);
    star = Arrays.copyOf(star, room);
    x = Arrays.copyOf(x, room);
    y = Arrays.copyOf(y, room);
    magnitude = Arrays.copyOf(magnitude, room);
    error = Arrays.copyOf(error, room);
  }

  /** The entries of each star, in the order added. */
  int[][] byStar() {
    return grouped(star, stars);
  }

  /** The entries of each frame, in the order added. */
  int[][] byFrame() {
    return grouped(frame, frames);
  }

  private int[][] grouped(int[] key, int groups) {
    int[] counts = new int[groups];
    for (int i = 0; i < size; i++) {
      counts[key[i]]++;
    }
    int[][] entries = new int[groups][];
    for (int group = 0; group < groups; group++) {
      entries[group] = new int[counts[group]];
    }
    Arrays.fill(counts, 0);
    for (int i = 0; i < size; i++) {
      entries[key[i]][counts[key[i]]++] = i;
    }
    return entries;
  }
}
