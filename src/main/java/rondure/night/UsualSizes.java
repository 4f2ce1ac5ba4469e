package rondure.night;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The frame size that each camera makes most often in the set. */
final class UsualSizes {
  private static final int LEAST_FRAMES = 3;

  /** Developers cut a few lines at the edges; less than that is no crop. */
  private static final double SMALLER_SHARE = 0.98;

  /**
   * A frame size.
   *
   * @param widthPx stored width
   * @param heightPx stored height
   */
  record Size(int widthPx, int heightPx) {
    double areaPx() {
      return (double) widthPx * heightPx;
    }

    /** Sides the other way round are the same size. */
    boolean isSameTurned(Size other) {
      return Math.max(widthPx, heightPx) == Math.max(other.widthPx, other.heightPx)
          && Math.min(widthPx, heightPx) == Math.min(other.widthPx, other.heightPx);
    }
  }

  private final Map<String, Size> byCamera = new HashMap<>();

  UsualSizes(List<Shot> shots) {
    Map<String, Map<Size, Integer>> counts = new HashMap<>();
    for (Shot shot : shots) {
      // Files that name no camera may come from anywhere; their sizes say nothing of each other.
      if (shot.facts().cameraModel().isPresent() && shot.exposure().widthPx() > 0) {
        Size size = new Size(shot.exposure().widthPx(), shot.exposure().heightPx());
        counts
            .computeIfAbsent(shot.cameraName(), name -> new HashMap<>())
            .merge(size, 1, Integer::sum);
      }
    }
    counts.forEach(
        (camera, sizes) ->
            sizes.entrySet().stream()
                .filter(entry -> entry.getValue() >= LEAST_FRAMES)
                .max(
                    Map.Entry.<Size, Integer>comparingByValue()
                        .thenComparing(entry -> entry.getKey().areaPx()))
                .ifPresent(entry -> byCamera.put(camera, entry.getKey())));
  }

  /** Whether a picture was resized or cropped: its camera's usual ones have more pixels. */
  boolean isSmaller(String cameraName, int widthPx, int heightPx) {
    Size size = new Size(widthPx, heightPx);
    return of(cameraName)
        .filter(usual -> !size.isSameTurned(usual))
        .filter(usual -> size.areaPx() < SMALLER_SHARE * usual.areaPx())
        .isPresent();
  }

  /** Empty when the camera is unknown or made no size at least three times. */
  Optional<Size> of(String cameraName) {
    return Optional.ofNullable(byCamera.get(cameraName));
  }
}
