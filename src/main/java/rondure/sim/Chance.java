package rondure.sim;

import java.util.SplittableRandom;

/** Seeded randomness: one stream for each purpose, so that nothing depends on the order of work. */
final class Chance {
  private Chance() {}

  /** A stream that depends on the seed and every mark, and on nothing else. */
  static SplittableRandom of(long seed, long... marks) {
    long state = mixed(seed);
    for (long mark : marks) {
      state = mixed(state ^ mixed(mark + 0x9E3779B97F4A7C15L));
    }
    return new SplittableRandom(state);
  }

  /** A repeatable number in [0, 1) for a lattice point. */
  static double at(long seed, long x, long y) {
    long bits = mixed(seed ^ mixed(x * 0x9E3779B97F4A7C15L ^ mixed(y + 0x632BE59BD9B4E019L)));
    return (bits >>> 11) * 0x1.0p-53;
  }

  // Finaliser of SplitMix64 (Steele, Lea & Flood 2014).
  private static long mixed(long value) {
    long bits = (value ^ (value >>> 30)) * 0xBF58476D1CE4E5B9L;
    bits = (bits ^ (bits >>> 27)) * 0x94D049BB133111EBL;
    return bits ^ (bits >>> 31);
  }
}
