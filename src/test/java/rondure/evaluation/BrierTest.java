package rondure.evaluation;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rondure.blur.Cause;
import rondure.blur.Verdict;
import rondure.night.FrameStatus;
import rondure.sim.CauseShares;

/** The scores of docs/accuracy.md on frames counted by hand. */
class BrierTest {

  private static Scored said(double focus, Cause truth) {
    Map<Cause, Double> probabilities = new EnumMap<>(Cause.class);
    for (Cause cause : Cause.values()) {
      probabilities.put(cause, 0.0);
    }
    probabilities.put(Cause.FOCUS, focus);
    probabilities.put(Cause.TRIPOD, 1 - focus);
    CauseShares shares = new CauseShares(1, 1, 0, 0, 0, 0);
    FrameAnswer answer = new FrameAnswer(1, truth, shares, shares, 1, 0, 100);
    return new Scored(
        "night " + focus,
        0,
        answer,
        FrameStatus.MEASURED,
        Optional.of(Verdict.of(probabilities, List.of())),
        Optional.empty(),
        false,
        true);
  }

  /**
   * p = 0.9, 0.8, 0.3, 0.1 of which the first two came true and the last did: mean (p - o)² =
   * 0.2375 (Brier 1950, Monthly Weather Review 78, 1; summed by hand). Over two causes p and 1 - p
   * err alike, so that the sum over causes is twice that.
   */
  @Test
  void fourForecastsHaveTheBrierScoreSummedByHand() {
    double[] said = {0.9, 0.8, 0.3, 0.1};
    boolean[] came = {true, true, false, true};
    double sum = 0;
    for (int i = 0; i < 4; i++) {
      sum += said(said[i], came[i] ? Cause.FOCUS : Cause.TRIPOD).brier() / 4;
    }
    assertEquals(2 * 0.2375, sum, 1e-12);
  }

  /** 10 frames said with 0.8, 8 of them right, causes weighing alike. */
  @Test
  void aBinSaysHowOftenItsFramesWereRight() {
    List<Scored> frames = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      frames.add(said(0.8, i < 4 ? Cause.FOCUS : Cause.TRIPOD));
      frames.add(said(0.2, i < 4 ? Cause.TRIPOD : Cause.FOCUS));
    }
    Reliability.Bin bin = new Reliability(frames).bins().get(5);
    assertEquals(10, bin.frames());
    assertEquals(0.8, bin.confidence(), 1e-12);
    assertEquals(0.8, bin.right(), 1e-12);
  }
}
