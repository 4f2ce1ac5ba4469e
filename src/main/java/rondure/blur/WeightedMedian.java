package rondure.blur;

/** The median of weighted values, found without sorting them all. */
final class WeightedMedian {
  private WeightedMedian() {}

  /**
   * The least value such that it and those below it have at least half of the weight; 0 of none.
   *
   * @param values reordered in place
   * @param weights of each, not negative; reordered alike
   */
  static double of(double[] values, double[] weights) {
    double half = 0;
    for (double weight : weights) {
      half += weight / 2;
    }
    int first = 0;
    int end = values.length;
    double below = 0;
    while (end - first > 1) {
      double pivot = middle(values[first], values[(first + end) / 2], values[end - 1]);
      // From first: less than the pivot; from low: the pivot; from high: more.
      int low = first;
      int high = end;
      double less = 0;
      double same = 0;
      for (int i = first; i < high; ) {
        if (values[i] < pivot) {
          less += weights[i];
          swap(values, weights, i++, low++);
        } else if (values[i] > pivot) {
          swap(values, weights, i, --high);
        } else {
          same += weights[i++];
        }
      }
      if (low > first && below + less >= half) {
        end = low;
      } else if (below + less + same >= half || high == end) {
        return pivot;
      } else {
        below += less + same;
        first = high;
      }
    }
    return end > first ? values[first] : 0;
  }

  private static double middle(double one, double two, double three) {
    return Math.max(Math.min(one, two), Math.min(Math.max(one, two), three));
  }

  private static void swap(double[] values, double[] weights, int i, int k) {
    double value = values[i];
    values[i] = values[k];
    values[k] = value;
    double weight = weights[i];
    weights[i] = weights[k];
    weights[k] = weight;
  }
}
