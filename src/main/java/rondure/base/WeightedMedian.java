package rondure.base;

/**
 * The median of weighted values, found without sorting them all (Hoare 1961, Comm. ACM 4, 321, from
 * memory).
 */
public final class WeightedMedian {
  private final double[] values;
  private final double[] weights;

  /** After a parting: where the pivot's equals begin, and where what is larger does. */
  private int low;

  private int high;
  private double lessWeight;
  private double sameWeight;

  private WeightedMedian(double[] values, double[] weights) {
    this.values = values;
    this.weights = weights;
  }

  /**
   * The least value such that it and those below it have at least half of the weight; 0 of none.
   *
   * @param values reordered in place
   * @param weights of each, not negative; reordered alike
   */
  public static double of(double[] values, double[] weights) {
    double half = 0;
    for (double weight : weights) {
      half += weight / 2;
    }
    return values.length == 0 ? 0 : new WeightedMedian(values, weights).at(half);
  }

  private double at(double half) {
    int first = 0;
    int end = values.length;
    double below = 0;
    while (end - first > 1) {
      double pivot = middle(values[first], values[(first + end) / 2], values[end - 1]);
      part(first, end, pivot);
      if (low > first && below + lessWeight >= half) {
        end = low;
      } else if (below + lessWeight + sameWeight >= half || high == end) {
        return pivot;
      } else {
        below += lessWeight + sameWeight;
        first = high;
      }
    }
    return values[first];
  }

  /** Puts smaller values first and larger ones last. */
  private void part(int first, int end, double pivot) {
    low = first;
    high = end;
    lessWeight = 0;
    sameWeight = 0;
    int i = first;
    while (i < high) {
      if (values[i] < pivot) {
        lessWeight += weights[i];
        swap(i++, low++);
      } else if (values[i] > pivot) {
        swap(i, --high);
      } else {
        sameWeight += weights[i++];
      }
    }
  }

  private static double middle(double one, double two, double three) {
    return Math.max(Math.min(one, two), Math.min(Math.max(one, two), three));
  }

  private void swap(int i, int k) {
    double value = values[i];
    values[i] = values[k];
    values[k] = value;
    double weight = weights[i];
    weights[i] = weights[k];
    weights[k] = weight;
  }
}
