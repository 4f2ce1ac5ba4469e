package rondure.evaluation;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import rondure.blur.Cause;
import rondure.blur.JudgedBudgets;

/**
 * How far budgets are off is fitted on calibration nights: the leeway in use is as likely as any on
 * a grid, causes weighing alike. The grid is in {@code target/evaluation/calibration.txt}.
 */
@Tag("thorough")
class CalibrationNightsTest {
  private static final double[] CORE = {0.02, 0.05};
  private static final double[] TERM = {0.05, 0.1, 0.2};
  private static final double[] FLOOR = {0.02, 0.05, 0.1};
  private static final double[] STRAY = {0.01, 0.03, 0.06, 0.1};
  private static final String IN_USE = "core 0.02 term 0.05 floor 0.02 stray 0.06";

  /** A frame with a budget and what is true of it. */
  private record Case(JudgedBudgets.Known known, Cause truth) {}

  private static List<Case> cases() {
    List<Case> cases = new ArrayList<>();
    for (MeasuredNight night : NightSet.CALIBRATION.nights()) {
      for (View view : new View[] {View.WHOLE, View.THREES}) {
        JudgedBudgets judged = new JudgedBudgets();
        List<Scored> measured =
            view.score(night, judged).stream().filter(s -> s.verdict().isPresent()).toList();
        for (int i = 0; i < measured.size(); i++) {
          Cause truth = measured.get(i).answer().cause();
          judged.known().get(i).ifPresent(known -> cases.add(new Case(known, truth)));
        }
      }
    }
    return cases;
  }

  /** Mean of -log of the true cause's probability, causes weighing alike, for each stray share. */
  private static double[] losses(List<Case> cases, double core, double term, double floor) {
    Map<Cause, Integer> counts = new EnumMap<>(Cause.class);
    cases.forEach(c -> counts.merge(c.truth(), 1, Integer::sum));
    double[] losses = new double[STRAY.length];
    for (Case one : cases) {
      double p = one.known().odds(core, term, floor).get(one.truth());
      for (int i = 0; i < STRAY.length; i++) {
        double mixed = (1 - STRAY[i]) * p + STRAY[i] / Cause.values().length;
        losses[i] -= Math.log(mixed) / counts.get(one.truth()) / counts.size();
      }
    }
    return losses;
  }

  @Test
  void theLeewayInUseIsAmongTheLikeliest() throws IOException {
    List<Case> cases = cases();
    StringBuilder text = new StringBuilder(cases.size() + " frames\n");
    double best = Double.POSITIVE_INFINITY;
    double used = Double.NaN;
    for (double core : CORE) {
      for (double term : TERM) {
        for (double floor : FLOOR) {
          double[] losses = losses(cases, core, term, floor);
          for (int i = 0; i < STRAY.length; i++) {
            String name =
                String.format(
                    Locale.ROOT,
                    "core %.2f term %.2f floor %.2f stray %.2f",
                    core,
                    term,
                    floor,
                    STRAY[i]);
            text.append(String.format(Locale.ROOT, "%s: %.4f%n", name, losses[i]));
            best = Math.min(best, losses[i]);
            used = name.equals(IN_USE) ? losses[i] : used;
          }
        }
      }
    }
    Path out = Path.of("target", "evaluation");
    Files.createDirectories(out);
    Files.writeString(out.resolve("calibration.txt"), text);
    assertTrue(used <= best + 0.03, used + " beside " + best);
  }
}
