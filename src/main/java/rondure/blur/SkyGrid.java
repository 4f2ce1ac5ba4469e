package rondure.blur;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import rondure.base.WeightedMedian;
import rondure.sky.Camera;
import rondure.sky.Direction;
import rondure.stars.SkyMask;
import rondure.stars.StarField;

/**
 * Places spread over the sky of a frame, weighted by the solid angle each stands for: a median over
 * them is the median over the sky, wherever its measured stars happen to be.
 */
final class SkyGrid {
  private static final int CELLS_ALONG = 20;
  private static final int CELLS_ACROSS = 14;
  private static final double INNER_SHARE = 0.8;

  private final FieldPlaces places;
  private final double[] weight;
  private final int[] outer;
  private final int[] all;

  private SkyGrid(List<double[]> points, View view, FieldPlaces.Motion motion) {
    double[] xs = points.stream().mapToDouble(p -> p[0]).toArray();
    double[] ys = points.stream().mapToDouble(p -> p[1]).toArray();
    places = new FieldPlaces(xs, ys, view, motion);
    weight = points.stream().mapToDouble(p -> solidAngle(view.camera(), p[0], p[1])).toArray();
    all = IntStream.range(0, weight.length).toArray();
    outer = outerFifth();
  }

  /** Of the sky part of a field; of the whole frame where the mask knows no sky. */
  static SkyGrid of(StarField field, View view, FieldPlaces.Motion motion) {
    List<double[]> points = new ArrayList<>();
    List<double[]> sky = new ArrayList<>();
    SkyMask mask = field.mask();
    boolean upright = field.heightPx() > field.widthPx();
    int columns = upright ? CELLS_ACROSS : CELLS_ALONG;
    int rows = upright ? CELLS_ALONG : CELLS_ACROSS;
    for (int k = 0; k < columns * rows; k++) {
      double x = (k % columns + 0.5) * field.widthPx() / columns - 0.5;
      double y = (k / columns + 0.5) * field.heightPx() / rows - 0.5;
      if (view.camera().sees(x, y)) {
        points.add(new double[] {x, y});
        if (mask.isSky(x, y)) {
          sky.add(new double[] {x, y});
        }
      }
    }
    return new SkyGrid(sky.isEmpty() ? points : sky, view, motion);
  }

  /** Solid angle of a pixel, up to a factor: the cross product of its sides on the sphere. */
  private static double solidAngle(Camera camera, double xPx, double yPx) {
    Direction left = camera.direction(xPx - 1, yPx);
    Direction right = camera.direction(xPx + 1, yPx);
    Direction up = camera.direction(xPx, yPx - 1);
    Direction down = camera.direction(xPx, yPx + 1);
    double ax = right.x() - left.x();
    double ay = right.y() - left.y();
    double az = right.z() - left.z();
    double bx = down.x() - up.x();
    double by = down.y() - up.y();
    double bz = down.z() - up.z();
    return Math.sqrt(
        Math.pow(ay * bz - az * by, 2)
            + Math.pow(az * bx - ax * bz, 2)
            + Math.pow(ax * by - ay * bx, 2));
  }

  private int[] outerFifth() {
    List<Integer> byRadius =
        IntStream.of(all)
            .boxed()
            .sorted(Comparator.comparingDouble((Integer i) -> Math.hypot(places.x[i], places.y[i])))
            .toList();
    double inner = INNER_SHARE * IntStream.of(all).mapToDouble(i -> weight[i]).sum();
    List<Integer> outside = new ArrayList<>();
    double passed = 0;
    for (int i : byRadius) {
      passed += weight[i];
      if (passed > inner) {
        outside.add(i);
      }
    }
    return outside.stream().mapToInt(i -> i).toArray();
  }

  FieldPlaces places() {
    return places;
  }

  /** Median over the sky. */
  double median(IntToDoubleFunction value) {
    return median(all, value);
  }

  /** Median over the fifth of the sky that is farthest from the image centre. */
  double edgeMedian(IntToDoubleFunction value) {
    return median(outer, value);
  }

  private double median(int[] chosen, IntToDoubleFunction value) {
    double[] values = new double[chosen.length];
    double[] weights = new double[chosen.length];
    for (int k = 0; k < chosen.length; k++) {
      values[k] = value.applyAsDouble(chosen[k]);
      weights[k] = weight[chosen[k]];
    }
    return WeightedMedian.of(values, weights);
  }
}
