package rondure.base;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Comparator;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** The quick median against the slow, obvious one. */
class WeightedMedianTest {

  /** Closed form: half of 1 + 1 + 2 is reached at the second of the sorted values. */
  @Test
  void heavyValuesCountMore() {
    assertEquals(2, WeightedMedian.of(new double[] {3, 1, 2}, new double[] {1, 1, 2}));
    assertEquals(3, WeightedMedian.of(new double[] {3, 1, 2}, new double[] {5, 1, 2}));
    assertEquals(7, WeightedMedian.of(new double[] {7}, new double[] {0.1}));
    assertEquals(0, WeightedMedian.of(new double[0], new double[0]));
  }

  /** Weights are whole numbers, so that no rounding tells the two apart. */
  @Test
  void isTheMedianOfSortedValues() {
    SplittableRandom chance = new SplittableRandom(11);
    for (int round = 0; round < 500; round++) {
      int count = 1 + chance.nextInt(40);
      int kinds = 1 + chance.nextInt(50);
      double[] values = chance.doubles(count, 0, kinds).map(Math::floor).toArray();
      double[] weights = chance.doubles(count, 1, 9).map(Math::floor).toArray();
      double expected = sorted(values, weights);
      assertEquals(expected, WeightedMedian.of(values.clone(), weights.clone()));
    }
  }

  private static double sorted(double[] values, double[] weights) {
    int[] order =
        IntStream.range(0, values.length)
            .boxed()
            .sorted(Comparator.comparingDouble(i -> values[i]))
            .mapToInt(i -> i)
            .toArray();
    double half = IntStream.of(order).mapToDouble(i -> weights[i] / 2).sum();
    double passed = 0;
    for (int i : order) {
      passed += weights[i];
      if (passed >= half) {
        return values[i];
      }
    }
    throw new IllegalStateException("weights add up to less than themselves");
  }
}
