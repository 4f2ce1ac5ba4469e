package rondure.bench;

import java.io.BufferedOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import rondure.base.PixelPlane;
import rondure.stars.Found;
import rondure.stars.PixelContext;
import rondure.stars.SkyPainter;
import rondure.stars.StarFinder;
import rondure.stars.StarSettings;

/**
 * Time to find about 2000 stars on 24 megapixels, on one core: {@code java -cp
 * target/test-classes:target/classes:… rondure.bench.FindBenchmark}. With a file name as argument
 * it writes the full plane as little-endian floats instead, for timing another library on the same
 * pixels.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 4, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(
    value = 1,
    jvmArgs = {"-Xmx1g", "-XX:+UseSerialGC", "-XX:ActiveProcessorCount=1"})
public class FindBenchmark {
  private static final int WIDTH = 6000;
  private static final int HEIGHT = 4000;
  private static final int STARS = 2000;
  private static final PixelContext CONTEXT = new PixelContext(15000, 1, false);

  @Param({"CHECKERBOARD", "EVERY_PIXEL"})
  public PixelPlane.Lattice lattice;

  private PixelPlane plane;

  @Setup(Level.Trial)
  public void render() {
    float[] samples = sky();
    plane =
        lattice == PixelPlane.Lattice.CHECKERBOARD
            ? PixelPlane.checkerboard(WIDTH, HEIGHT, SkyPainter.greens(samples, WIDTH, 1), 1)
            : PixelPlane.full(WIDTH, HEIGHT, samples);
  }

  /** A vignetted sky with stars of 2.4 px FWHM whose numbers grow towards the faint. */
  private static float[] sky() {
    SkyPainter painter = new SkyPainter(WIDTH, HEIGHT, 24);
    painter.add(
        (x, y) -> {
          double radius = Math.hypot(x - WIDTH / 2.0, y - HEIGHT / 2.0) / 3600;
          return 600 * (1 - 0.5 * radius * radius);
        });
    for (int i = 0; i < STARS; i++) {
      double flux = 600 * Math.pow(painter.uniform(1e-3, 1), -0.8);
      painter.star(painter.uniform(0, WIDTH), painter.uniform(0, HEIGHT), flux, 1.02);
    }
    float[] samples = painter.exposed(6, 0.25);
    for (int i = 0; i < samples.length; i++) {
      samples[i] = Math.round(samples[i]);
    }
    return samples;
  }

  @Benchmark
  public Found find() {
    return StarFinder.find(plane, CONTEXT, StarSettings.defaults());
  }

  /** Runs the benchmark, or writes its pixels to the file named. */
  public static void main(String[] arguments) throws RunnerException, IOException {
    if (arguments.length == 1) {
      write(Path.of(arguments[0]));
      return;
    }
    new Runner(new OptionsBuilder().include(FindBenchmark.class.getSimpleName()).build()).run();
  }

  private static void write(Path file) throws IOException {
    ByteBuffer row = ByteBuffer.allocate(WIDTH * Float.BYTES).order(ByteOrder.LITTLE_ENDIAN);
    float[] samples = sky();
    try (DataOutputStream out =
        new DataOutputStream(new BufferedOutputStream(Files.newOutputStream(file)))) {
      for (int y = 0; y < HEIGHT; y++) {
        row.clear();
        row.asFloatBuffer().put(samples, y * WIDTH, WIDTH);
        out.write(row.array());
      }
    }
  }
}
