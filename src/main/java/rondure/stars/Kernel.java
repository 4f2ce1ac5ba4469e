package rondure.stars;

/**
 * Small separable bell-shaped filters over rows, scaled so that white noise keeps unit variance.
 *
 * <p>Weights are binomial. Rows are filtered in two steps: down over neighbouring rows, then
 * across.
 */
enum Kernel {
  /** 1 2 1: half a place² of variance. */
  NARROW(1, 2, 1),
  /** 1 4 6 4 1: one place² of variance; wide enough to lose little between places. */
  WIDE(1, 4, 6, 4, 1);

  private final float[] weights;

  Kernel(int... weights) {
    double squares = 0;
    for (int weight : weights) {
      squares += weight * weight;
    }
    this.weights = new float[weights.length];
    for (int i = 0; i < weights.length; i++) {
      this.weights[i] = (float) (weights[i] / Math.sqrt(squares));
    }
  }

  /** Rows (and columns) on each side of the centre that the filter reaches. */
  int reach() {
    return weights.length / 2;
  }

  /**
   * Filters one row.
   *
   * @param rows the rows from {@link #reach} above to as many below, top to bottom
   * @param work scratch of the rows' length
   * @param out the filtered row; beyond the ends the light is taken as 0
   */
  void filter(float[][] rows, float[] work, float[] out) {
    if (this == NARROW) {
      downThree(rows, weights, work);
      acrossThree(work, weights, out);
    } else {
      downFive(rows, weights, work);
      acrossFive(work, weights, out);
    }
    int reach = reach();
    for (int i = 0; i < Math.min(reach, out.length); i++) {
      out[i] = atEnd(work, i);
      out[out.length - 1 - i] = atEnd(work, out.length - 1 - i);
    }
  }

  private static void downThree(float[][] rows, float[] weights, float[] out) {
    float[] above = rows[0];
    float[] middle = rows[1];
    float[] below = rows[2];
    float centre = weights[1];
    float side = weights[0];
    for (int i = 0; i < out.length; i++) {
      out[i] = centre * middle[i] + side * (above[i] + below[i]);
    }
  }

  private static void acrossThree(float[] in, float[] weights, float[] out) {
    float centre = weights[1];
    float side = weights[0];
    for (int i = 1; i < out.length - 1; i++) {
      out[i] = centre * in[i] + side * (in[i - 1] + in[i + 1]);
    }
  }

  private static void downFive(float[][] rows, float[] weights, float[] out) {
    float[] farAbove = rows[0];
    float[] above = rows[1];
    float[] middle = rows[2];
    float[] below = rows[3];
    float[] farBelow = rows[4];
    float centre = weights[2];
    float side = weights[1];
    float far = weights[0];
    for (int i = 0; i < out.length; i++) {
      out[i] =
          centre * middle[i] + side * (above[i] + below[i]) + far * (farAbove[i] + farBelow[i]);
    }
  }

  private static void acrossFive(float[] in, float[] weights, float[] out) {
    float centre = weights[2];
    float side = weights[1];
    float far = weights[0];
    for (int i = 2; i < out.length - 2; i++) {
      out[i] = centre * in[i] + side * (in[i - 1] + in[i + 1]) + far * (in[i - 2] + in[i + 2]);
    }
  }

  /** The filter across at a place near an end, where part of it lies outside. */
  private float atEnd(float[] in, int place) {
    int reach = reach();
    float sum = 0;
    for (int k = -reach; k <= reach; k++) {
      boolean inside = place + k >= 0 && place + k < in.length;
      sum += inside ? weights[reach + k] * in[place + k] : 0;
    }
    return sum;
  }
}
