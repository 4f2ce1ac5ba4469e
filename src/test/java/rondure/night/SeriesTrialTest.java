package rondure.night;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Parabolas through repeated frames, and how likely they are. */
class SeriesTrialTest {
  private static final List<Double> POSITIONS =
      Stream.of(0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 5, 5).map(Integer::doubleValue).toList();

  private static final List<Double> PX2 =
      List.of(3.10, 3.06, 2.05, 2.11, 1.33, 1.30, 1.01, 1.04, 1.19, 1.16, 1.81, 1.85);

  private static SeriesTrial.Guess guess(double shared, double uneven) {
    FieldLevels levels = new FieldLevels(PX2, Collections.nCopies(12, 0.02 / Math.sqrt(2)));
    SeriesTrial trial = new SeriesTrial(new SeriesPlans.Plan(POSITIONS, false), levels);
    return trial.guesses(new double[] {shared}, new double[] {uneven}).get(0);
  }

  /**
   * numpy 1.24.2, computed once: generalised least squares on the single frames, with the
   * covariance σ² I + τ² 1 1' of the frames of a position, τ by three rounds from the curve, and
   * the restricted likelihood -½ (log |Σ| + log |X'Σ⁻¹X| + r'Σ⁻¹r).
   */
  @Test
  void curvesAndLikelihoodsAreThoseOfTheSingleFramesWithTheirCovariance() {
    SeriesTrial.Guess even = guess(0.004, 0);
    assertEquals(0.21485733882651203, even.curve().curvaturePx2(), 1e-9);
    assertEquals(3.1207653519699328, even.curve().at(), 1e-9);
    SeriesTrial.Guess uneven = guess(0.02, 0.1);
    assertEquals(0.2199245295546419, uneven.curve().curvaturePx2(), 1e-9);
    assertEquals(3.1296856814796126, uneven.curve().at(), 1e-9);
    assertEquals(1.0224105695180419, uneven.curve().leastPx2(), 1e-9);
    double likelihood = 19.82724720279859 - -14.669586389721694;
    double prior = Math.log(0.5 / 8) - Math.log(1 + 4.0) - Math.log(0.5) + Math.log(1 + 0.16);
    assertEquals(likelihood + prior, uneven.logWeight() - even.logWeight(), 1e-8);
    assertEquals(
        17.538449413886003 - 17.831641876741767 + Math.log(1 / 8.0) - Math.log(1.16 / 5),
        guess(0.004, 0.1).logWeight() - guess(0.02, 0).logWeight(),
        1e-8);
  }
}
