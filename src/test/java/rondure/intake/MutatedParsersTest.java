package rondure.intake;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import rondure.testing.Mutator;

/**
 * Every parser of ours reads every valid seed, and thousands of damaged ones of every layout, or
 * refuses them with a reason: no other exception, no array out of proportion, no hang.
 */
class MutatedParsersTest {
  private static final long SEED = 20_261_127;

  /** Of processor time, which does not depend on what else the machine does. */
  private static final Duration HANGS = Duration.ofSeconds(10);

  private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

  @Test
  void seedsAndTheirMutantsAreReadOrRefused() throws IOException {
    run(1_500, SEED);
  }

  /** {@code -Drondure.mutants=N} sets how many for each parser. */
  @Test
  @Tag("thorough")
  void hundredsOfThousandsOfMutantsAreReadOrRefused() throws IOException {
    run(Integer.getInteger("rondure.mutants", 100_000), SEED + 1);
  }

  private static void run(int count, long seed) throws IOException {
    for (Map.Entry<String, List<byte[]>> kind : FuzzSeeds.all().entrySet()) {
      List<byte[]> seeds = kind.getValue();
      for (byte[] sound : seeds) {
        FileFuzz.run(kind.getKey(), sound);
      }
      Mutator mutator = new Mutator(seed);
      for (int i = 0; i < count; i++) {
        read(kind.getKey(), mutator.damaged(seeds.get(i % seeds.size())), i);
      }
    }
  }

  private static void read(String name, byte[] damaged, int i) throws IOException {
    long start = THREADS.getCurrentThreadCpuTime();
    try {
      FileFuzz.run(name, damaged);
    } catch (RuntimeException | Error fault) {
      throw new AssertionError(name + ", mutant " + i + ": " + fault, fault);
    }
    long taken = THREADS.getCurrentThreadCpuTime() - start;
    assertTrue(taken < HANGS.toNanos(), name + ", mutant " + i + " took " + taken + " ns");
  }
}
