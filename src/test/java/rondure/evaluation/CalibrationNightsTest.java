package rondure.evaluation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import rondure.blur.Calibration;
import rondure.blur.Ground;
import rondure.blur.RawAttribution;

/**
 * How sure verdicts may be is fitted on calibration nights, for each ground they rest on; the
 * calibrations in use are as likely as any. What was fitted is in {@code
 * target/evaluation/calibration.txt}.
 */
@Tag("thorough")
class CalibrationNightsTest {
  /**
   * Of the logarithmic score: less than a twentieth of what the calibration as a whole is worth.
   */
  private static final double ALIKE = 0.01;

  private static final int FEWEST_FRAMES = 100;

  private static List<CalibrationFit.Case> cases() {
    List<CalibrationFit.Case> cases = new ArrayList<>();
    for (MeasuredNight night : NightSet.CALIBRATION.nights()) {
      for (View view : View.values()) {
        RawAttribution raw = new RawAttribution();
        List<Scored> judged =
            view.score(night, raw).stream().filter(s -> s.verdict().isPresent()).toList();
        for (int i = 0; i < judged.size(); i++) {
          RawAttribution.Raw frame = raw.frames().get(i);
          Scored one = judged.get(i);
          assertEquals(frame.odds(), one.verdict().orElseThrow().probabilities());
          if (one.tellable()) {
            cases.add(
                new CalibrationFit.Case(
                    frame.ground(), night.name(), one.answer().cause(), frame.odds()));
          }
        }
      }
    }
    return cases;
  }

  @Test
  void theCalibrationsInUseAreAsLikelyAsAny() throws IOException {
    Map<Ground, List<CalibrationFit.Case>> grounds =
        cases().stream().collect(Collectors.groupingBy(CalibrationFit.Case::ground));
    StringBuilder text = new StringBuilder();
    for (Ground ground : Ground.values()) {
      text.append(CalibrationFit.line(ground, grounds.get(ground)));
    }
    Path out = Path.of("target", "evaluation");
    Files.createDirectories(out);
    Files.writeString(out.resolve("calibration.txt"), text);
    for (Ground ground : Ground.values()) {
      List<CalibrationFit.Case> cases = grounds.get(ground);
      assertTrue(cases.size() >= FEWEST_FRAMES, ground + ": " + cases.size() + " frames");
      double used = CalibrationFit.penalised(cases, Calibration.fitted(ground));
      double best = CalibrationFit.penalised(cases, CalibrationFit.fit(cases));
      assertTrue(used <= best + ALIKE, text.toString());
    }
  }
}
