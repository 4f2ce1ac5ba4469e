package rondure.evaluation;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Disjoint sets of nights: one to tune by, one to calibrate by, one to be judged by. */
enum NightSet {
  TUNING(1_000, 1),
  CALIBRATION(20_000, 2),
  TEST(300_000, 2),
  /** In every build. */
  QUICK(7_000_000, 1);

  /** Measured nights stay here between runs; "mvn clean" throws them away. */
  private static final Path SHELF = Path.of("target", "evaluation-nights");

  private final long firstSeed;
  private final int rounds;

  NightSet(long firstSeed, int rounds) {
    this.firstSeed = firstSeed;
    this.rounds = rounds;
  }

  /** Every trouble once in each round. */
  List<NightDraw.Drawn> plans() {
    List<NightDraw.Drawn> plans = new ArrayList<>();
    for (int round = 0; round < rounds; round++) {
      for (Trouble trouble : Trouble.values()) {
        long seed = firstSeed + 100L * round + trouble.ordinal();
        plans.add(new NightDraw(seed, trouble).drawn());
      }
    }
    return plans;
  }

  /** All nights of the set, from the shelf where they lie there. */
  List<MeasuredNight> nights() {
    return plans().stream().map(drawn -> MeasuredNight.of(drawn, SHELF)).toList();
  }
}
