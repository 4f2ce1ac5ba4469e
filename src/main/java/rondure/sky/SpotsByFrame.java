package rondure.sky;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiPredicate;

/** Static spots by place, to ask whether a detection of a frame lies on one of them. */
final class SpotsByFrame {
  /** A lamp flickers and may be missed at the ends of its run. */
  private static final int MARGIN_FRAMES = 3;

  private final PointGrid hotPixels;
  private final List<StaticSpot> lights = new ArrayList<>();

  SpotsByFrame(List<StaticSpot> spots) {
    List<StaticSpot> hot = new ArrayList<>();
    for (StaticSpot spot : spots) {
      (spot.kind() == StaticSpot.Kind.HOT_PIXEL ? hot : lights).add(spot);
    }
    hotPixels = grid(hot);
  }

  /** What is static in one frame: hot pixels in every frame, lights while they were seen. */
  BiPredicate<Double, Double> inFrame(int frame) {
    PointGrid shining =
        grid(
            lights.stream()
                .filter(s -> frame >= s.firstFrame() - MARGIN_FRAMES)
                .filter(s -> frame <= s.lastFrame() + MARGIN_FRAMES)
                .toList());
    double radiusPx = StaticDetections.STAY_RADIUS_PX;
    return (x, y) -> hotPixels.nearest(x, y, radiusPx) >= 0 || shining.nearest(x, y, radiusPx) >= 0;
  }

  private static PointGrid grid(List<StaticSpot> spots) {
    double[] xs = spots.stream().mapToDouble(StaticSpot::xPx).toArray();
    double[] ys = spots.stream().mapToDouble(StaticSpot::yPx).toArray();
    return new PointGrid(xs, ys, xs.length);
  }
}
