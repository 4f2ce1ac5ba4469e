package rondure.night;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import rondure.RunSummary;
import rondure.blur.Attribution;
import rondure.blur.AttributionSettings;
import rondure.blur.OneFrameAttribution;
import rondure.report.sidecar.SidecarSummary;

/**
 * A fault of this program in one scene leaves that scene unexplained and the others as they are.
 */
class FaultInOneSceneTest {
  private static NightBook sound;
  private static NightBook faulty;

  /**
   * Two scenes of four frames: 20 mm, then 35 mm, of which the second is the one with the fault.
   */
  private static NightBook book(Attribution attribution) {
    List<MeasuredExposure> exposures = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      Exposures frame = Exposures.at("f" + i + ".tif", Exposures.EVENING.plusMinutes(i));
      frame.focal = Optional.of(i < 4 ? 20.0 : 35.0);
      exposures.add(frame.make());
    }
    return NightBuilder.build(
        new NightInput("night", exposures, Map.of(), List.of()),
        NightSettings.defaults(),
        attribution);
  }

  /** 35 mm over 8 µm are 4375 px, 20 mm are 2500. */
  private static Attribution failingAt35Mm(Attribution whole) {
    return scene -> {
      if (scene.frames().get(0).focalLengthPx().orElseThrow() > 4000) {
        // In the pool of threads, where the budget's work is done, and faults come back wrapped.
        IntStream.range(0, 4)
            .parallel()
            .forEach(
                i -> {
                  throw new IllegalStateException("no such lens");
                });
      }
      return whole.judge(scene);
    };
  }

  @BeforeAll
  static void judge() {
    Attribution whole = new OneFrameAttribution(AttributionSettings.defaults());
    sound = book(whole);
    faulty = book(failingAt35Mm(whole));
  }

  private static List<NightFrame> scene(NightBook book, int number) {
    return book.scenes().get(number - 1).frames().stream().map(book.frames()::get).toList();
  }

  @Test
  void theOtherSceneIsJudgedAsEver() {
    assertEquals(2, sound.scenes().size());
    for (int i = 0; i < 4; i++) {
      NightFrame before = scene(sound, 1).get(i);
      NightFrame after = scene(faulty, 1).get(i);
      assertEquals(before.verdict(), after.verdict());
      assertEquals(before.grade(), after.grade());
      assertEquals(before.shape(), after.shape());
    }
  }

  @Test
  void itsFramesAreMeasuredButNotExplained() {
    for (int i = 0; i < 4; i++) {
      NightFrame frame = scene(faulty, 2).get(i);
      assertEquals(FrameStatus.MEASURED, frame.status());
      assertEquals(scene(sound, 2).get(i).shape(), frame.shape());
      assertTrue(frame.verdict().isEmpty() && frame.budget().isEmpty() && frame.grade().isEmpty());
      assertTrue(frame.reason().orElseThrow().contains("neither explained nor graded"));
    }
    assertEquals(8, faulty.nights().get(0).measuredCount());
    assertEquals(
        4,
        new RunSummary(faulty, Optional.empty(), SidecarSummary.none(), List.of())
            .unexplainedCount());
    assertEquals(
        0,
        new RunSummary(sound, Optional.empty(), SidecarSummary.none(), List.of())
            .unexplainedCount());
  }

  @Test
  void oneRemarkSaysWhatHappenedAndWhere() {
    List<String> told = faulty.notes().stream().filter(n -> n.contains("fault")).toList();
    assertEquals(1, told.size(), told.toString());
    assertTrue(told.get(0).startsWith("Scene 2: "), told.get(0));
    assertTrue(told.get(0).contains("no such lens"), told.get(0));
    assertTrue(told.get(0).contains(FaultInOneSceneTest.class.getName()), told.get(0));
    assertFalse(sound.notes().stream().anyMatch(n -> n.contains("fault")));
  }
}
