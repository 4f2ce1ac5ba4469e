package rondure.evaluation;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** Disjoint sets of nights: one to tune by, one to calibrate by, one to be judged by. */
enum NightSet {
  TUNING(1_000, 1, 0),
  CALIBRATION(20_000, 2, 3),
  TEST(300_000, 1, 3);

  /** Few frames of a night with haze are hazy: more such nights, that causes weigh alike. */
  private static final Set<Trouble> HAZY = EnumSet.of(Trouble.DEW, Trouble.CLOUD);

  /** Measured nights stay here between runs; "mvn clean" throws them away. */
  private static final Path SHELF = Path.of("target", "evaluation-nights");

  private final long firstSeed;
  private final int rounds;
  private final int hazyRounds;

  NightSet(long firstSeed, int rounds, int hazyRounds) {
    this.firstSeed = firstSeed;
    this.rounds = rounds;
    this.hazyRounds = hazyRounds;
  }

  /** Every trouble once in each round, then rounds of haze alone. */
  List<NightDraw.Drawn> plans() {
    List<NightDraw.Drawn> plans = new ArrayList<>();
    for (int round = 0; round < rounds + hazyRounds; round++) {
      for (Trouble trouble : round < rounds ? EnumSet.allOf(Trouble.class) : HAZY) {
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
