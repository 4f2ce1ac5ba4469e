package rondure.night;

import java.util.ArrayList;
import java.util.List;

/** Divides frames of one camera and lens where it was aimed anew. */
final class AimSplitter {
  private AimSplitter() {}

  /**
   * Where scenes start, the first at 0. Frames that were each aimed anew, as for a panorama, stay
   * together.
   *
   * @param aimedAnew whether the camera was aimed anew before each frame, in time order
   */
  static List<Integer> starts(boolean[] aimedAnew) {
    List<Integer> starts = new ArrayList<>();
    for (int i = 0; i < aimedAnew.length; i++) {
      boolean beforeIsAlone = i < 2 || aimedAnew[i - 1];
      boolean isAlone = i + 1 == aimedAnew.length || aimedAnew[i + 1];
      if (i == 0 || aimedAnew[i] && !(beforeIsAlone && isAlone)) {
        starts.add(i);
      }
    }
    return starts;
  }
}
