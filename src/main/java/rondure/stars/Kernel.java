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
    int reach = reach();
    float centre = weights[reach];
    float[] middle = rows[reach];
    for (int i = 0; i < out.length; i++) {
      work[i] = centre * middle[i];
    }
    for (int k = 1; k <= reach; k++) {
      addPair(rows[reach - k], rows[reach + k], weights[reach - k], work);
    }
    for (int i = 0; i < out.length; i++) {
      out[i] = centre * work[i];
    }
    for (int k = 1; k <= reach; k++) {
      addShifted(work, k, weights[reach - k], out);
    }
  }

  private static void addPair(float[] above, float[] below, float weight, float[] out) {
    for (int i = 0; i < out.length; i++) {
      out[i] += weight * (above[i] + below[i]);
    }
  }

  private static void addShifted(float[] in, int shift, float weight, float[] out) {
    for (int i = shift; i < out.length - shift; i++) {
      out[i] += weight * (in[i - shift] + in[i + shift]);
    }
    for (int i = 0; i < Math.min(shift, out.length); i++) {
      int mirrored = out.length - 1 - i;
      out[i] += i + shift < out.length ? weight * in[i + shift] : 0;
      if (mirrored >= shift) {
        out[mirrored] += weight * in[mirrored - shift];
      }
    }
  }
}
