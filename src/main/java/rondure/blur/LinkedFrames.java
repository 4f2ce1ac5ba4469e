package rondure.blur;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * Frames that share stars, directly or by others between them.
 *
 * <p>A frame of which hardly any star is seen both before and after it ends its group: the camera
 * was knocked while the shutter was open, stars end in one image and begin in the other, and the
 * two share the light.
 */
final class LinkedFrames {
  private final int[] group;

  private LinkedFrames(int[] group) {
    this.group = group;
  }

  /**
   * @param leastStars fewest stars that two frames must share to be linked
   */
  static LinkedFrames of(StarLight light, int leastStars) {
    boolean[] ends = ends(light, leastStars);
    Map<Long, Integer> shared = new HashMap<>();
    for (int[] entries : light.byStar()) {
      for (int i = 1; i < entries.length; i++) {
        // neighbours in the star's own course are enough: links pass on
        long pair = (long) light.frame[entries[i - 1]] * light.frames + light.frame[entries[i]];
        shared.merge(pair, 1, Integer::sum);
      }
    }
    int[] group = IntStream.range(0, light.frames).toArray();
    shared.forEach(
        (pair, count) -> {
          int from = (int) (pair / light.frames);
          if (count >= leastStars && !ends[from]) {
            join(group, from, (int) (pair % light.frames));
          }
        });
    for (int i = 0; i < group.length; i++) {
      group[i] = root(group, i);
    }
    return new LinkedFrames(group);
  }

  /** Frames with stars from before it, hardly any of which goes on after it. */
  private static boolean[] ends(StarLight light, int leastStars) {
    int[] before = new int[light.frames];
    int[] across = new int[light.frames];
    for (int[] entries : light.byStar()) {
      for (int i = 1; i < entries.length; i++) {
        before[light.frame[entries[i]]]++;
      }
      int last = entries.length == 0 ? 0 : light.frame[entries[entries.length - 1]];
      for (int f = entries.length == 0 ? 0 : light.frame[entries[0]] + 1; f < last; f++) {
        across[f]++;
      }
    }
    boolean[] ends = new boolean[light.frames];
    for (int f = 0; f < light.frames; f++) {
      ends[f] = before[f] >= leastStars && across[f] < leastStars;
    }
    return ends;
  }

  private static void join(int[] group, int one, int two) {
    int first = root(group, one);
    int second = root(group, two);
    group[Math.max(first, second)] = Math.min(first, second);
  }

  private static int root(int[] group, int of) {
    int at = of;
    while (group[at] != at) {
      at = group[at];
    }
    return at;
  }

  int groupOf(int frame) {
    return group[frame];
  }

  List<Integer> groups() {
    return Arrays.stream(group).distinct().sorted().boxed().toList();
  }

  /** How many frames are linked with this one, itself included. */
  int size(int frame) {
    return (int) Arrays.stream(group).filter(g -> g == group[frame]).count();
  }

  /** The frames of a group. */
  int[] members(int groupNumber) {
    return IntStream.range(0, group.length).filter(i -> group[i] == groupNumber).toArray();
  }

  /** The values of a group's frames. */
  double[] in(int groupNumber, double[] values) {
    return Arrays.stream(members(groupNumber)).mapToDouble(i -> values[i]).toArray();
  }
}
