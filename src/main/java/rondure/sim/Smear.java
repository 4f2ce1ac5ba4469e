package rondure.sim;

import java.util.Arrays;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * A uniform smear of a picture: by a path, as weights on whole-px shifts, and by a round Gaussian
 * for the lens's core and disc at the centre.
 */
final class Smear {
  private static final double STILL_PX = 0.05;

  /** A whole-px shift and the share of the time spent there. */
  private record Shift(int x, int y, double share) {}

  private final Shift[] shifts;
  private final double[] gaussian;

  /**
   * The smear of a path and a lens.
   *
   * @param x px from where the picture was drawn, a point for each equal time step
   * @param y the same, downwards
   * @param variancePx2 of the Gaussian, per axis
   */
  Smear(double[] x, double[] y, double variancePx2) {
    this.gaussian = gaussian(variancePx2);
    Map<Long, Double> shares = new TreeMap<>();
    double furthest = 0;
    for (int i = 0; i < x.length; i++) {
      furthest = Math.max(furthest, Math.hypot(x[i], y[i]));
      int left = (int) Math.floor(x[i]);
      int top = (int) Math.floor(y[i]);
      for (int corner = 0; corner < 4; corner++) {
        int atX = left + corner % 2;
        int atY = top + corner / 2;
        double share = (1 - Math.abs(x[i] - atX)) * (1 - Math.abs(y[i] - atY)) / x.length;
        shares.merge(((long) atX << 32) | (atY & 0xFFFFFFFFL), share, Double::sum);
      }
    }
    this.shifts =
        furthest < STILL_PX
            ? new Shift[0]
            : shares.entrySet().stream()
                .filter(e -> e.getValue() > 1e-4)
                .map(e -> new Shift((int) (e.getKey() >> 32), e.getKey().intValue(), e.getValue()))
                .toArray(Shift[]::new);
  }

  private static double[] gaussian(double variancePx2) {
    int reach = (int) Math.ceil(3.5 * Math.sqrt(variancePx2));
    double[] weights = new double[2 * reach + 1];
    double total = 0;
    for (int i = 0; i < weights.length; i++) {
      double distance = i - reach;
      weights[i] = variancePx2 > 0 ? Math.exp(-distance * distance / (2 * variancePx2)) : 1;
      total += weights[i];
    }
    for (int i = 0; i < weights.length; i++) {
      weights[i] /= total;
    }
    return weights;
  }

  /**
   * The smeared plane. Edge values go on outside; rows that hold nothing but {@code empty} within
   * reach stay so.
   */
  float[] applied(float[] plane, int width, int height, float empty) {
    float[] shifted = shifts.length == 0 ? plane : swept(plane, width, height, shifts, empty);
    int reach = gaussian.length / 2;
    Shift[] across = new Shift[gaussian.length];
    Shift[] down = new Shift[gaussian.length];
    for (int i = 0; i < gaussian.length; i++) {
      across[i] = new Shift(i - reach, 0, gaussian[i]);
      down[i] = new Shift(0, i - reach, gaussian[i]);
    }
    float[] wide = swept(shifted, width, height, across, empty);
    return swept(wide, width, height, down, empty);
  }

  private static float[] swept(float[] plane, int width, int height, Shift[] shifts, float empty) {
    double total = Arrays.stream(shifts).mapToDouble(Shift::share).sum();
    int reach = Arrays.stream(shifts).mapToInt(s -> Math.abs(s.y())).max().orElse(0);
    boolean[] busy = busyRows(plane, width, height, empty);
    float[] smeared = new float[plane.length];
    IntStream.range(0, height)
        .parallel()
        .forEach(
            y -> {
              if (anyBusy(busy, y - reach, y + reach)) {
                for (int x = 0; x < width; x++) {
                  smeared[y * width + x] = (float) (sum(plane, width, x, y, shifts) / total);
                }
              } else {
                Arrays.fill(smeared, y * width, (y + 1) * width, empty);
              }
            });
    return smeared;
  }

  private static double sum(float[] plane, int width, int x, int y, Shift[] shifts) {
    int height = plane.length / width;
    double sum = 0;
    for (Shift shift : shifts) {
      int fromX = Math.max(0, Math.min(width - 1, x - shift.x()));
      int fromY = Math.max(0, Math.min(height - 1, y - shift.y()));
      sum += shift.share() * plane[fromY * width + fromX];
    }
    return sum;
  }

  private static boolean[] busyRows(float[] plane, int width, int height, float empty) {
    boolean[] busy = new boolean[height];
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width && !busy[y]; x++) {
        busy[y] = plane[y * width + x] != empty;
      }
    }
    return busy;
  }

  private static boolean anyBusy(boolean[] busy, int from, int until) {
    for (int y = Math.max(0, from); y <= Math.min(busy.length - 1, until); y++) {
      if (busy[y]) {
        return true;
      }
    }
    return false;
  }
}
