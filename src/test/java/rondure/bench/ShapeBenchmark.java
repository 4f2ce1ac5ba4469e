package rondure.bench;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import rondure.stars.ShapeTask;
import rondure.stars.StarField;

/**
 * Time to shape 400 stars that have been found already. Run by hand:
 *
 * <pre>
 * mvn -q test-compile dependency:build-classpath -Dmdep.outputFile=target/classpath.txt
 * java -cp target/classes:target/test-classes:$(cat target/classpath.txt) \
 *     org.openjdk.jmh.Main ShapeBenchmark
 * </pre>
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class ShapeBenchmark {
  /** What the stars look like. */
  @Param({"ROUND", "ROUND_GREEN", "SHARP", "TRAIL_6", "TRAIL_30", "DISC_8", "MOFFAT"})
  public String look;

  private ShapeTask task;

  @Setup
  public void paint() {
    task = ShapeTask.of(ShapeTask.Look.valueOf(look), 20);
  }

  /** Shapes of all stars of the frame, averages included. */
  @Benchmark
  public StarField shape() {
    return task.run();
  }
}
