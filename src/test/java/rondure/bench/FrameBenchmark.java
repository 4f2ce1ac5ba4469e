package rondure.bench;

import java.io.IOException;
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
import rondure.base.FrameProblem;
import rondure.intake.DecodedFrame;
import rondure.intake.FactsReader;
import rondure.intake.FrameDecoder;
import rondure.intake.ShotFacts;
import rondure.stars.StarField;

/**
 * Time of one frame of 24 megapixels from the file to the list of stars, and of its two halves. The
 * frame is {@link HeavyFrame}'s; {@code src/test/bench/speed.sh} runs this beside another library
 * on one core.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 4)
@Measurement(iterations = 6, time = 4)
@Fork(
    value = 1,
    jvmArgs = {"-Xmx512m", "-XX:+UseSerialGC", "-XX:ActiveProcessorCount=1"})
public class FrameBenchmark {
  /** Folder with the two files, as {@link HeavyFrame} writes them. */
  @Param("target/speed")
  public String folder;

  /** Which of the two. */
  @Param({"heavy.dng", "heavy.fits"})
  public String file;

  private Path path;
  private ShotFacts facts;
  private DecodedFrame frame;

  /** Reads what the single halves need; the file's bytes are in the page cache afterwards. */
  @Setup(Level.Trial)
  public void open() throws IOException, FrameProblem {
    path = Path.of(folder, file);
    if (!Files.exists(path)) {
      throw new IOException(path + " is not there; render it with HeavyFrame first");
    }
    facts = FactsReader.read(path);
    frame = FrameDecoder.decode(path, facts.format(), facts.orientation());
  }

  /** The file to a linear plane and a thumbnail. */
  @Benchmark
  public DecodedFrame decode() throws FrameProblem {
    return FrameDecoder.decode(path, facts.format(), facts.orientation());
  }

  /** The plane to the list of stars: background, finding, shapes, averages. */
  @Benchmark
  public StarField measure() {
    return ShapeExport.measure(frame);
  }

  /** The file to the list of stars. */
  @Benchmark
  public StarField whole() throws FrameProblem {
    return ShapeExport.measure(FrameDecoder.decode(path, facts.format(), facts.orientation()));
  }
}
