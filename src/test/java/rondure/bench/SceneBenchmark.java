package rondure.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
import rondure.blur.AttributionSettings;
import rondure.blur.FieldShape;
import rondure.blur.FrameEvidence;
import rondure.blur.SceneAttribution;
import rondure.blur.SceneEvidence;
import rondure.blur.SceneReference;
import rondure.blur.SceneVerdicts;
import rondure.sim.NightPlan;
import rondure.sky.Registration;
import rondure.sky.SceneFrame;
import rondure.sky.SceneSky;
import rondure.sky.SkyMotion;
import rondure.sky.SkyShot;
import rondure.sky.StaticDetections;
import rondure.sky.StaticReport;
import rondure.testing.SimNight;
import rondure.testing.TruthFields;

/**
 * Time of the work on a whole scene, on one core: static detections, registration, attribution.
 * {@code java -cp target/test-classes:target/classes:… rondure.bench.SceneBenchmark}. The star
 * lists are the simulator's true ones with the noise of measuring, about 500 stars a frame; it says
 * how many there were.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 1)
@Measurement(iterations = 3)
@Fork(
    value = 1,
    jvmArgs = {"-Xmx1g", "-XX:+UseSerialGC", "-XX:ActiveProcessorCount=1"})
public class SceneBenchmark {
  private static final String[] RICH = {
    "stars.starsPerSquareDegree",
    "12",
    "stars.faintestMagnitude",
    "8.2",
    "camera.zeroPointElectronsPerSecondPerCm2",
    "4e5"
  };

  @Param({"100", "1000"})
  public int frameCount;

  private List<SkyShot> shots;
  private SceneEvidence evidence;

  @Setup(Level.Trial)
  public void prepare() {
    String group =
        "[{\"count\": %d, \"exposureSeconds\": 13, \"intervalSeconds\": 20, \"iso\": 800}]"
            .formatted(frameCount);
    List<String> changes = new ArrayList<>(List.of(RICH));
    changes.addAll(List.of("shots", group));
    NightPlan plan = SimNight.plan(changes.toArray(String[]::new));
    shots = TruthFields.shots(plan);
    evidence = evidence(Registration.of(shots));
    double stars = shots.stream().mapToInt(s -> s.field().stars().size()).average().orElse(0);
    System.out.printf("%d frames of %.0f stars%n", frameCount, stars);
  }

  private SceneEvidence evidence(SceneSky sky) {
    List<SceneReference.Member> members =
        shots.stream()
            .map(s -> new SceneReference.Member(FieldShape.of(s.field()), s.exposureSeconds()))
            .toList();
    SceneReference reference = SceneReference.of(members);
    List<FrameEvidence> frames =
        shots.stream()
            .map(
                s ->
                    new FrameEvidence(
                        s.field(),
                        s.exposureSeconds(),
                        s.focalLengthPx(),
                        Optional.empty(),
                        Optional.of(1.0),
                        false,
                        reference))
            .toList();
    List<Integer> places = new ArrayList<>();
    frames.forEach(frame -> places.add(places.size()));
    return new SceneEvidence(frames, places, sky);
  }

  /** What stays on the sensor. */
  @Benchmark
  public StaticReport statics() {
    return StaticDetections.examine(shots.stream().map(SceneBenchmark::frame).toList());
  }

  private static SceneFrame frame(SkyShot shot) {
    Optional<Double> speed = shot.focalLengthPx().map(f -> f * SkyMotion.SIDEREAL_RATE_RAD_PER_S);
    return new SceneFrame(shot.field(), shot.midSeconds(), speed);
  }

  /** Frames to attitudes, pole and tracks. */
  @Benchmark
  public SceneSky registration() {
    return Registration.of(shots);
  }

  /** Budgets, light, verdicts. */
  @Benchmark
  public SceneVerdicts attribution() {
    return new SceneAttribution(AttributionSettings.defaults()).judge(evidence);
  }

  public static void main(String[] args) throws RunnerException {
    new Runner(new OptionsBuilder().include(SceneBenchmark.class.getSimpleName()).build()).run();
  }
}
