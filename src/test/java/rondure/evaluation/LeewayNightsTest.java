package rondure.evaluation;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import rondure.blur.Calibration;
import rondure.blur.Cause;
import rondure.blur.JudgedBudgets;

/**
 * How far budgets are off beyond their errors: the leeway in use is as likely as any on a grid, on
 * calibration nights, causes weighing alike. The grid is in {@code target/evaluation/leeway.txt}.
 */
@Tag("thorough")
class LeewayNightsTest {
  private static final double[] CORE = {0.02, 0.05};
  private static final double[] TERM = {0.05, 0.1, 0.2};
  private static final double[] FLOOR = {0.02, 0.05, 0.1};
  private static final String IN_USE = "core 0.02 term 0.05 floor 0.02";

  /** Of the logarithmic score. */
  private static final double ALIKE = 0.03;

  /** A frame with a budget and what is true of it. */
  private record Known(String night, JudgedBudgets.Known budget, Cause truth) {}

  private static List<Known> known() {
    List<Known> known = new ArrayList<>();
    for (MeasuredNight night : NightSet.CALIBRATION.nights()) {
      for (View view : new View[] {View.WHOLE, View.THREES}) {
        JudgedBudgets judged = new JudgedBudgets();
        List<Scored> measured =
            view.score(night, judged).stream().filter(s -> s.verdict().isPresent()).toList();
        for (int i = 0; i < measured.size(); i++) {
          Scored one = measured.get(i);
          judged
              .known()
              .get(i)
              .filter(k -> one.tellable())
              .ifPresent(k -> known.add(new Known(night.name(), k, one.answer().cause())));
        }
      }
    }
    return known;
  }

  private static double score(List<Known> known, double core, double term, double floor) {
    List<CalibrationFit.Case> cases =
        known.stream()
            .map(
                k ->
                    new CalibrationFit.Case(
                        k.budget().ground(),
                        k.night(),
                        k.truth(),
                        k.budget().probabilities(core, term, floor)))
            .toList();
    return CalibrationFit.score(cases, new Calibration(1, 0, 0));
  }

  @Test
  void theLeewayInUseIsAmongTheLikeliest() throws IOException {
    List<Known> known = known();
    StringBuilder text = new StringBuilder(known.size() + " frames\n");
    double best = Double.POSITIVE_INFINITY;
    double used = Double.NaN;
    for (double core : CORE) {
      for (double term : TERM) {
        for (double floor : FLOOR) {
          String name =
              String.format(Locale.ROOT, "core %.2f term %.2f floor %.2f", core, term, floor);
          double score = score(known, core, term, floor);
          text.append(String.format(Locale.ROOT, "%s: %.4f%n", name, score));
          best = Math.min(best, score);
          used = name.equals(IN_USE) ? score : used;
        }
      }
    }
    Path out = Path.of("target", "evaluation");
    Files.createDirectories(out);
    Files.writeString(out.resolve("leeway.txt"), text);
    assertTrue(used <= best + ALIKE, used + " beside " + best);
  }
}
