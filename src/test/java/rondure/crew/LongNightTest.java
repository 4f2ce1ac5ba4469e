package rondure.crew;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.stars.StarSettings;

@Tag("thorough")
class LongNightTest {
  private static final int FRAMES = 2000;
  private static final int EVERY = 200;
  private static final long GROWTH_MIB_MAX = 20;

  @TempDir Path temp;

  /** A record here is about 150 kB as JSON: 2,000 kept ones would take some 300 MB. */
  @Test
  void theParentsMemoryStaysFlatOverTwoThousandFrames() throws Exception {
    String[] names = IntStream.range(0, FRAMES).mapToObj(i -> "fat-" + i).toArray(String[]::new);
    List<MeasureJob> jobs = CrewFixture.jobs(temp, names);
    List<Long> usedMiB = new ArrayList<>();
    int[] stars = new int[1];
    try (Crew crew = Crew.start(CrewFixture.settings(2), temp)) {
      crew.measure(
          jobs,
          StarSettings.defaults(),
          CrewFixture.NOTHING_KEPT,
          (index, outcome) -> {
            if (outcome instanceof Outcome.Done<FrameMeasurement> done) {
              stars[0] += done.answer().field().stars().size();
            }
            if ((index + 1) % EVERY == 0) {
              usedMiB.add(usedMiB());
            }
          });
    }
    assertEquals(FRAMES * 200, stars[0]);
    long growth = usedMiB.get(usedMiB.size() - 1) - usedMiB.get(0);
    assertTrue(growth < GROWTH_MIB_MAX, () -> "used MiB every " + EVERY + ": " + usedMiB);
  }

  private static long usedMiB() {
    System.gc();
    Runtime runtime = Runtime.getRuntime();
    return (runtime.totalMemory() - runtime.freeMemory()) >> 20;
  }
}
