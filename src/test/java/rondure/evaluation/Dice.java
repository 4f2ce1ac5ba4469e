package rondure.evaluation;

import java.util.SplittableRandom;

/** Draws by named distributions. */
final class Dice {
  private final SplittableRandom random;

  Dice(long seed) {
    this.random = new SplittableRandom(seed);
  }

  double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  /** Even in the logarithm. */
  double scaled(double low, double high) {
    return low * Math.pow(high / low, random.nextDouble());
  }

  boolean chance(double probability) {
    return random.nextDouble() < probability;
  }

  double pick(double... values) {
    return values[random.nextInt(values.length)];
  }

  /** -1 or 1. */
  double sign() {
    return random.nextBoolean() ? 1 : -1;
  }
}
