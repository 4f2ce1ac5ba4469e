package rondure.base;

/** Order statistics without sorting everything (Hoare 1961, Commun. ACM 4, 321, "Find"). */
final class Selection {
  private Selection() {}

  /**
   * Moves the values so that the one at {@code place} is what sorting would put there, with none
   * greater before it and none smaller after it. On average linear in the number of values.
   *
   * @param values without NaN; rearranged
   * @param count of them that take part, from the first
   */
  static double partitioned(double[] values, int count, int place) {
    int from = 0;
    int to = count - 1;
    while (from < to) {
      double pivot = middle(values[from], values[(from + to) >>> 1], values[to]);
      int left = from;
      int right = to;
      while (left <= right) {
        while (values[left] < pivot) {
          left++;
        }
        while (values[right] > pivot) {
          right--;
        }
        if (left <= right) {
          double kept = values[left];
          values[left++] = values[right];
          values[right--] = kept;
        }
      }
      if (place > right && place < left) {
        break;
      }
      to = place <= right ? right : to;
      from = place >= left ? left : from;
    }
    return values[place];
  }

  /** Least of the values from one place to before another. */
  static double least(double[] values, int from, int until) {
    double least = values[from];
    for (int i = from + 1; i < until; i++) {
      least = Math.min(least, values[i]);
    }
    return least;
  }

  private static double middle(double a, double b, double c) {
    return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
  }
}
