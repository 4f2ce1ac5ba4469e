package rondure.sky;

/** How likely chance alone makes as many matches: the guard against false registrations. */
final class ChanceLevel {
  private ChanceLevel() {}

  /**
   * Natural logarithm of an upper bound of the probability that at least {@code hits} of {@code
   * trials} independent trials succeed: -n KL(k/n ‖ p) (Chernoff 1952, Ann. Math. Stat. 23, 493;
   * from memory). 0 when the number of hits is no more than expected.
   */
  static double logTail(int trials, int hits, double chance) {
    if (trials <= 0 || hits <= 0 || hits <= trials * chance) {
      return 0;
    }
    double share = (double) hits / trials;
    double p = Math.max(1e-12, chance);
    double hit = share * Math.log(share / p);
    double miss =
        share < 1 ? (1 - share) * Math.log((1 - share) / (1 - Math.min(p, 1 - 1e-12))) : 0;
    return -trials * (hit + miss);
  }
}
