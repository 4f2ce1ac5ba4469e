package rondure.night;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import rondure.base.Orientation;
import rondure.blur.Attribution;
import rondure.blur.Budget;
import rondure.blur.FieldShape;
import rondure.blur.Judged;
import rondure.blur.SceneBudget;
import rondure.blur.SceneReference;
import rondure.blur.SceneVerdicts;
import rondure.blur.Verdict;
import rondure.crew.FrameMeasurement;
import rondure.sky.FrameSky;
import rondure.sky.Spin;
import rondure.sky.StaticReport;

/** Judges the frames of one scene against each other. */
final class SceneJudge {
  private final NightSettings settings;
  private final Attribution attribution;
  private final GradeRule gradeRule;

  SceneJudge(NightSettings settings, Attribution attribution) {
    this.settings = settings;
    this.attribution = attribution;
    this.gradeRule = new GradeRule(settings);
  }

  /**
   * What the scene showed.
   *
   * @param frames judged, in the order given
   * @param reference what the measured frames have in common, when there are any
   * @param statics what stayed on the sensor
   * @param aims the frames by where the camera looked, in time order
   * @param fault of this program, that left the frames without a verdict
   */
  record Judgement(
      List<JudgedShot> frames,
      Optional<SceneReference> reference,
      StaticReport statics,
      List<Aimed> aims,
      Optional<SceneFault> fault) {}

  /**
   * Frames of one aim.
   *
   * @param from place of the first among the frames judged together
   * @param until place after the last
   * @param solution what the stars told about aim and lens
   */
  record Aimed(int from, int until, SceneSolution solution) {}

  /** One frame of the scene, judged. */
  record JudgedShot(
      Shot shot,
      FrameMeasurement measurement,
      Optional<Ruling> ruling,
      Optional<Double> trailPx,
      Optional<FrameShape> shape,
      Optional<Verdict> verdict,
      Optional<Budget> budget,
      Optional<FrameCourse> course,
      Optional<Usefulness> usefulness,
      Optional<Graded> graded) {}

  /**
   * A fault of this program costs the scene its explanation, not the night its report.
   *
   * @param shots readable frames of the night, in time order
   */
  Judgement judge(List<Shot> shots) {
    try {
      return explained(SceneReading.of(shots, settings));
    } catch (RuntimeException fault) {
      return unexplained(SceneReading.frameByFrame(shots, settings), SceneFault.of(fault));
    }
  }

  private Judgement explained(SceneReading reading) {
    SceneVerdicts answers =
        reading
            .evidence()
            .map(attribution::judge)
            .orElse(new SceneVerdicts(List.of(), Optional.empty()));
    Iterator<Judged> next = answers.frames().iterator();
    List<JudgedShot> frames =
        frames(reading, (i, shape) -> measured(reading, i, shape, next.next()));
    return judgement(reading, frames, answers.shared(), Optional.empty());
  }

  private Judgement unexplained(SceneReading reading, SceneFault fault) {
    List<JudgedShot> frames = frames(reading, (i, shape) -> measuredOnly(reading, i, shape));
    return judgement(reading, frames, Optional.empty(), Optional.of(fault));
  }

  private List<JudgedShot> frames(
      SceneReading reading, BiFunction<Integer, FieldShape, JudgedShot> measured) {
    List<JudgedShot> frames = new ArrayList<>();
    for (int i = 0; i < reading.shots().size(); i++) {
      Optional<FieldShape> shape = reading.shapes().get(i);
      frames.add(shape.isPresent() ? measured.apply(i, shape.get()) : tooFew(reading, i));
    }
    return frames;
  }

  private Judgement judgement(
      SceneReading reading,
      List<JudgedShot> frames,
      Optional<SceneBudget.Shared> shared,
      Optional<SceneFault> fault) {
    boolean[] aimedAnew = new boolean[frames.size()];
    for (int i = 0; i < aimedAnew.length; i++) {
      double share = FrameCourse.jumpShare(reading, i).orElse(0.0);
      aimedAnew[i] = share >= settings.events().reAimShare();
    }
    List<Integer> starts = AimSplitter.starts(aimedAnew);
    List<Aimed> aims = new ArrayList<>();
    for (int k = 0; k < starts.size(); k++) {
      int from = starts.get(k);
      int until = k + 1 < starts.size() ? starts.get(k + 1) : aimedAnew.length;
      Orientation held = reading.shots().get(from).facts().orientation();
      List<FrameSky> own = reading.sky().frames().subList(from, until);
      aims.add(new Aimed(from, until, SceneSolution.of(reading.sky(), own, held, shared)));
    }
    return new Judgement(frames, reading.reference(), reading.statics(), aims, fault);
  }

  private JudgedShot tooFew(SceneReading reading, int index) {
    StaticReport statics = reading.statics();
    FrameMeasurement measurement = reading.measurement(index);
    String reason =
        TooFewStars.reason(
            measurement.field(), statics.removed().get(index), statics.finding(), settings);
    return new JudgedShot(
        reading.shots().get(index),
        measurement,
        Optional.of(new Ruling(FrameStatus.TOO_FEW_STARS, reason)),
        trailPx(reading, index),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  private JudgedShot measured(SceneReading reading, int index, FieldShape shape, Judged answer) {
    Shot shot = reading.shots().get(index);
    FrameMeasurement measurement = reading.measurement(index);
    Verdict verdict = DisplayAngles.of(answer.verdict(), shot.facts().orientation());
    Usefulness use =
        Usefulness.of(measurement.field(), shot.facts().orientation(), settings.grades().uses());
    Graded graded = gradeRule.grade(shape, reading.reference().orElseThrow(), verdict, use);
    return new JudgedShot(
        shot,
        measurement,
        Optional.empty(),
        trailPx(reading, index),
        Optional.of(FrameShapes.of(shot, measurement.field(), shape)),
        Optional.of(verdict),
        answer.budget(),
        Optional.of(FrameCourse.of(reading, index, answer.loss())),
        Optional.of(use),
        Optional.of(graded));
  }

  private JudgedShot measuredOnly(SceneReading reading, int index, FieldShape shape) {
    Shot shot = reading.shots().get(index);
    FrameMeasurement measurement = reading.measurement(index);
    Usefulness use =
        Usefulness.of(measurement.field(), shot.facts().orientation(), settings.grades().uses());
    return new JudgedShot(
        shot,
        measurement,
        Optional.of(new Ruling(FrameStatus.MEASURED, SceneFault.OF_A_FRAME)),
        trailPx(reading, index),
        Optional.of(FrameShapes.of(shot, measurement.field(), shape)),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.of(use),
        Optional.empty());
  }

  /**
   * The sky's trail at the frame's centre: by its pole where it is known, by the stars' motion
   * where it cannot be told from the camera's, else the longest.
   */
  private static Optional<Double> trailPx(SceneReading reading, int index) {
    Shot shot = reading.shots().get(index);
    FrameSky sky = reading.sky().frames().get(index);
    boolean byPole = reading.sky().pole().isPresent();
    Optional<Spin> spin = byPole ? sky.skySpin() : sky.starSpin();
    Optional<Double> seen =
        reading
            .sky()
            .camera()
            .flatMap(
                camera -> spin.map(s -> camera.flow(s, camera.centreXPx(), camera.centreYPx())))
            .flatMap(flow -> shot.exposureSeconds().map(t -> t * flow.speedPxPerS()));
    return seen.or(shot::trailPx);
  }
}
