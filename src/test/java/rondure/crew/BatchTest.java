package rondure.crew;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class BatchTest {

  @Property(tries = 50)
  void outcomesAreInOrderAndNoMoreThanTheWindowAreAhead(
      @ForAll @IntRange(max = 200) int size,
      @ForAll @IntRange(min = 1, max = 20) int window,
      @ForAll @IntRange(min = 1, max = 5) int threadCount,
      @ForAll Random random)
      throws Exception {
    Batch<Integer> batch = new Batch<>(size, window);
    AtomicInteger delivered = new AtomicInteger();
    List<Integer> ahead = Collections.synchronizedList(new ArrayList<>());
    for (int i = 0; i < threadCount; i++) {
      Roster.daemon(() -> doAll(batch, delivered, ahead), "batch-test").start();
    }
    List<Integer> seen = new ArrayList<>();
    batch.deliver(
        (index, outcome) -> {
          assertEquals(new Outcome.Done<>(index), outcome);
          seen.add(index);
          delivered.incrementAndGet();
          if (random.nextInt(10) == 0) {
            Thread.yield();
          }
        });
    assertEquals(IntStream.range(0, size).boxed().toList(), seen);
    assertTrue(ahead.stream().allMatch(a -> a <= window + 1), () -> window + ": " + ahead);
  }

  /** An outcome may be in delivery without being counted: one more than the window. */
  private static void doAll(Batch<Integer> batch, AtomicInteger delivered, List<Integer> ahead) {
    try {
      for (int i = batch.take(); i >= 0; i = batch.take()) {
        ahead.add(i + 1 - delivered.get());
        batch.put(i, new Outcome.Done<>(i));
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Test
  void aProblemReachesTheOneWhoWaits() {
    Batch<Integer> batch = new Batch<>(3, 3);
    batch.fail(new CrewProblem("no memory"));
    CrewProblem problem = assertThrows(CrewProblem.class, () -> batch.deliver((i, o) -> {}));
    assertEquals("no memory", problem.getMessage());
  }
}
