package rondure.bench;

import com.sun.management.GarbageCollectionNotificationInfo;
import com.sun.management.OperatingSystemMXBean;
import java.lang.management.GarbageCollectorMXBean;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryUsage;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.atomic.AtomicLong;
import javax.management.NotificationEmitter;
import javax.management.openmbean.CompositeData;
import rondure.blur.Attribution;
import rondure.blur.AttributionSettings;
import rondure.blur.FrameEvidence;
import rondure.blur.SceneAttribution;
import rondure.blur.SceneEvidence;
import rondure.blur.SceneVerdicts;
import rondure.crew.FrameMeasurement;
import rondure.crew.Outcome;
import rondure.evaluation.TruthNight;
import rondure.night.MeasuredExposure;
import rondure.night.NightBuilder;
import rondure.night.NightInput;
import rondure.night.NightSettings;
import rondure.sim.NightPlan;
import rondure.testing.SimNight;

/**
 * What the work on whole scenes costs: the attribution, and all else that follows the measuring of
 * single frames, nearly all of it registration. {@code bash src/test/bench/scene.sh} runs it.
 *
 * <p>The star lists are the simulator's true ones with the noise of measuring, each with average
 * stars as the program makes them. Times are the processor's for the whole process, with compiler
 * and garbage collector: other work on the machine hardly matters. The heap is the most that was in
 * use after any collection, the star lists and what later collections still took away included.
 */
public final class SceneBenchmark {
  private static final String[] RICH = {
    "stars.starsPerSquareDegree",
    "1.5",
    "stars.faintestMagnitude",
    "8.2",
    "camera.zeroPointElectronsPerSecondPerCm2",
    "4e5"
  };

  private static final OperatingSystemMXBean SYSTEM =
      (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
  private static final AtomicLong HEAP_BYTES = new AtomicLong();

  private SceneBenchmark() {}

  /**
   * @param counts numbers of frames, the largest last
   */
  public static void main(String[] counts) {
    watchHeap();
    NightPlan plan = plan(Integer.parseInt(counts[counts.length - 1]));
    List<MeasuredExposure> exposures = exposures(plan);
    System.out.printf("seed %d%n", plan.seed());
    System.out.println("frames  stars  all s  of it attribution s  ms/frame  heap MiB");
    for (String count : counts) {
      measure(exposures.subList(0, Integer.parseInt(count)));
    }
  }

  private static NightPlan plan(int frames) {
    List<String> changes = new ArrayList<>(List.of(RICH));
    changes.add("shots");
    changes.add(
        "[{\"count\": %d, \"exposureSeconds\": 13, \"intervalSeconds\": 20, \"iso\": 800}]"
            .formatted(frames));
    return SimNight.plan(changes.toArray(String[]::new));
  }

  private static List<MeasuredExposure> exposures(NightPlan plan) {
    List<MeasuredExposure> exposures = new ArrayList<>();
    for (FrameMeasurement bare : TruthNight.frames(plan)) {
      FrameMeasurement frame =
          new FrameMeasurement(
              bare.facts(),
              bare.linearity(),
              DrawnAverages.added(bare.field(), exposures.size()),
              bare.thumbnail());
      String name = String.format(Locale.ROOT, "frame-%04d", exposures.size());
      exposures.add(new MeasuredExposure(name, List.of(), bare.facts(), new Outcome.Done<>(frame)));
    }
    return exposures;
  }

  private static void measure(List<MeasuredExposure> exposures) {
    NightInput input = new NightInput("night", exposures, Map.of(), List.of());
    Timed attribution = new Timed();
    HEAP_BYTES.set(0);
    long start = SYSTEM.getProcessCpuTime();
    NightBuilder.build(input, NightSettings.defaults(), attribution);
    double all = (SYSTEM.getProcessCpuTime() - start) / 1e9;
    System.out.printf(
        Locale.ROOT,
        "%6d %6.0f %6.2f %21.2f %9.1f %9d%n",
        exposures.size(),
        attribution.stars,
        all,
        attribution.seconds,
        1000 * attribution.seconds / exposures.size(),
        HEAP_BYTES.get() >> 20);
  }

  /** The program's attribution, its processor time taken. */
  private static final class Timed implements Attribution {
    private final Attribution real = new SceneAttribution(AttributionSettings.defaults());
    private double seconds;
    private double stars;

    @Override
    public SceneVerdicts judge(SceneEvidence scene) {
      long start = SYSTEM.getProcessCpuTime();
      SceneVerdicts verdicts = real.judge(scene);
      seconds += (SYSTEM.getProcessCpuTime() - start) / 1e9;
      stars = scene.frames().stream().mapToInt(Timed::stars).average().orElse(0);
      return verdicts;
    }

    private static int stars(FrameEvidence frame) {
      return frame.field().stars().size() + frame.field().others().size();
    }
  }

  private static void watchHeap() {
    for (GarbageCollectorMXBean collector : ManagementFactory.getGarbageCollectorMXBeans()) {
      ((NotificationEmitter) collector)
          .addNotificationListener(
              (notification, unused) -> {
                CompositeData data = (CompositeData) notification.getUserData();
                Map<String, MemoryUsage> pools =
                    GarbageCollectionNotificationInfo.from(data)
                        .getGcInfo()
                        .getMemoryUsageAfterGc();
                long used =
                    pools.entrySet().stream()
                        .filter(pool -> pool.getKey().matches(".*(Eden|Survivor|Tenured).*"))
                        .mapToLong(pool -> pool.getValue().getUsed())
                        .sum();
                HEAP_BYTES.accumulateAndGet(used, Math::max);
              },
              null,
              null);
    }
  }
}
