package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rondure.sim.FrameTruth;
import rondure.sim.NightPlan;
import rondure.sky.Registration;
import rondure.sky.SceneSky;
import rondure.sky.SkyShot;
import rondure.testing.SimNight;
import rondure.testing.TruthFields;

/**
 * Clocks that are wrong make nothing wrong: ten frames of 12.7 s, 75 s apart, wind in three of
 * them, in the order that their times give.
 */
class WrongClockTest {
  private static final int FRAMES = 10;
  private static final int FIRST_GUST = 4;
  private static final int LAST_GUST = 6;
  private static final NightPlan PLAN =
      SimNight.plan(
          "shots",
          "[{\"count\": 10, \"exposureSeconds\": 12.7, \"intervalSeconds\": 75, \"iso\": 800}]",
          "events",
          "[{\"kind\": \"gust\", \"firstFrame\": 5, \"lastFrame\": 7, \"amplitudePx\": 2.8,"
              + " \"acrossShare\": 0.35, \"frequencyHz\": 5.2, \"directionDeg\": 21.0}]");

  /** What the files tell instead of the true time. */
  enum Clock {
    RIGHT,
    MISSING,
    MISSING_IN_TWO,
    ALL_EQUAL,
    WHOLE_SECONDS,
    /** Minutes only: nearly half of the gaps are 60 s, the others 120 s. */
    WHOLE_MINUTES,
    HOUR_AHEAD,
    HOUR_BACK;

    Optional<Double> told(int frame, double seconds) {
      boolean late = frame >= FRAMES / 2;
      return switch (this) {
        case RIGHT -> Optional.of(seconds);
        case MISSING -> Optional.empty();
        case MISSING_IN_TWO -> frame == 2 || frame == 7 ? Optional.empty() : Optional.of(seconds);
        case ALL_EQUAL -> Optional.of(7.0);
        case WHOLE_SECONDS -> Optional.of(Math.floor(seconds));
        case WHOLE_MINUTES -> Optional.of(60 * Math.floor(seconds / 60));
        case HOUR_AHEAD -> Optional.of(late ? seconds + 3600 : seconds);
        case HOUR_BACK -> Optional.of(late ? seconds - 3600 : seconds);
      };
    }

    double stepSeconds() {
      return this == WHOLE_MINUTES ? 60 : this == WHOLE_SECONDS ? 1 : 0.01;
    }
  }

  @ParameterizedTest
  @EnumSource(Clock.class)
  void noFrameIsWronglyCalled(Clock clock) {
    BudgetNights.Night night = BudgetNights.ofTruth(PLAN);
    List<Integer> order = order(clock);
    List<SkyShot> shots = new ArrayList<>();
    List<FrameEvidence> frames = new ArrayList<>();
    for (int frame : order) {
      FrameEvidence evidence = night.evidence().frames().get(frame);
      SkyShot shot = TruthFields.shot(PLAN, night.truths().get(frame), evidence.field());
      frames.add(evidence);
      shots.add(told(shot, clock.told(frame, shot.midSeconds().orElseThrow()), clock));
    }
    SceneSky sky = Registration.of(shots);
    SceneEvidence scene =
        new SceneEvidence(frames, IntStream.range(0, FRAMES).boxed().toList(), sky);
    SceneVerdicts verdicts = new SceneAttribution(AttributionSettings.defaults()).judge(scene);
    int right = 0;
    for (int i = 0; i < FRAMES; i++) {
      int frame = order.get(i);
      Verdict verdict = verdicts.frames().get(i).verdict();
      boolean gust = frame >= FIRST_GUST && frame <= LAST_GUST;
      Cause wanted = gust ? Cause.TRIPOD : calm(night.truths().get(frame));
      right += verdict.cause().equals(Optional.of(wanted)) ? 1 : 0;
      boolean honest = verdict.confidence() < Verdict.DECIDED_FROM;
      assertTrue(
          honest || verdict.probabilities().get(wanted) == verdict.confidence(),
          clock + ", frame " + frame + ", " + wanted + ": " + verdict.probabilities());
      assertFalse(
          !gust && verdict.saw(Evidence.Kind.CAMERA_CREEPS),
          clock + ", frame " + frame + " creeps " + sky.finding());
    }
    assertTrue(right >= 9, clock + ": " + right + " of 10 named rightly");
  }

  /** As the folder is read: by the times told, those without a time last. */
  private static List<Integer> order(Clock clock) {
    List<Integer> order = new ArrayList<>(IntStream.range(0, FRAMES).boxed().toList());
    order.sort(
        Comparator.comparingDouble(
            frame -> clock.told(frame, 75.0 * frame).orElse(Double.POSITIVE_INFINITY)));
    return order;
  }

  private static SkyShot told(SkyShot shot, Optional<Double> mid, Clock clock) {
    return new SkyShot(
        shot.field(),
        mid,
        clock.stepSeconds(),
        shot.exposureSeconds(),
        shot.focalLengthPx(),
        shot.orientation());
  }

  /** Without wind the sky trails or nothing does. */
  private static Cause calm(FrameTruth truth) {
    return truth.sharesPx2().trailing() > 0.5625 * truth.sharesPx2().core()
        ? Cause.TRAILING
        : Cause.NONE;
  }
}
