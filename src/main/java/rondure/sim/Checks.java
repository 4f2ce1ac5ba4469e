package rondure.sim;

/** Refusals with name, value and range, for the records of a plan. NaN is always refused. */
final class Checks {
  private Checks() {}

  static void positive(String name, double value) {
    if (!(value > 0 && Double.isFinite(value))) {
      throw new IllegalArgumentException(name + " must be > 0, was " + value);
    }
  }

  static void notNegative(String name, double value) {
    if (!(value >= 0 && Double.isFinite(value))) {
      throw new IllegalArgumentException(name + " must be >= 0, was " + value);
    }
  }

  static void within(String name, double value, double lowest, double highest) {
    if (!(value >= lowest && value <= highest)) {
      throw new IllegalArgumentException(
          name + " must be in [" + lowest + ", " + highest + "], was " + value);
    }
  }

  static void finite(String name, double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException(name + " must be a number, was " + value);
    }
  }

  static void frames(int firstFrame, int lastFrame) {
    if (firstFrame < 1 || lastFrame < firstFrame) {
      throw new IllegalArgumentException(
          "frames are counted from 1 and in order, were " + firstFrame + " to " + lastFrame);
    }
  }
}
