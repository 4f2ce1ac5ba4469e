package rondure.night;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import rondure.blur.Attribution;
import rondure.blur.BestCase;
import rondure.blur.Budget;
import rondure.blur.FieldShape;
import rondure.blur.FrameEvidence;
import rondure.blur.SceneEvidence;
import rondure.blur.SceneReference;
import rondure.blur.Verdict;
import rondure.crew.FrameMeasurement;
import rondure.intake.Fact;
import rondure.intake.Linearity;
import rondure.sky.Registration;
import rondure.sky.SceneFrame;
import rondure.sky.SceneSky;
import rondure.sky.SkyShot;
import rondure.sky.StaticDetections;
import rondure.sky.StaticReport;
import rondure.stars.StarField;

/** Judges the frames of one scene against each other. */
final class SceneJudge {
  private final NightSettings settings;
  private final Attribution attribution;
  private final KeepRule keepRule;

  SceneJudge(NightSettings settings, Attribution attribution) {
    this.settings = settings;
    this.attribution = attribution;
    this.keepRule = new KeepRule(settings);
  }

  /**
   * What the scene showed.
   *
   * @param frames judged, in the order given
   * @param reference what the measured frames have in common, when there are any
   * @param statics what stayed on the sensor
   */
  record Judgement(List<Judged> frames, Optional<SceneReference> reference, StaticReport statics) {}

  /** One frame of the scene, judged. */
  record Judged(
      Shot shot,
      FrameMeasurement measurement,
      Optional<Ruling> ruling,
      Optional<FrameShape> shape,
      Optional<Verdict> verdict,
      Optional<Budget> budget,
      Optional<Grade> grade) {}

  /**
   * @param shots readable frames of the night, in time order
   */
  Judgement judge(List<Shot> shots) {
    StaticReport statics = StaticDetections.examine(shots.stream().map(this::sceneFrame).toList());
    List<SceneReference.Member> members = new ArrayList<>();
    List<Optional<FieldShape>> shapes = new ArrayList<>();
    for (int i = 0; i < shots.size(); i++) {
      StarField field = statics.fields().get(i);
      Optional<FieldShape> shape =
          TooFewStars.applies(field, settings)
              ? Optional.empty()
              : Optional.of(FieldShape.of(field));
      Optional<Double> seconds = shots.get(i).exposureSeconds();
      shape.ifPresent(s -> members.add(new SceneReference.Member(s, seconds)));
      shapes.add(shape);
    }
    Optional<SceneReference> reference =
        members.isEmpty() ? Optional.empty() : Optional.of(SceneReference.of(members));
    SceneSky sky = sky(shots, statics);
    List<Judged> judged = judged(shots, statics, shapes, reference, sky);
    return new Judgement(judged, reference, statics);
  }

  private SceneFrame sceneFrame(Shot shot) {
    return new SceneFrame(measurement(shot).field(), shot.midSeconds(), shot.skySpeedPxPerS());
  }

  private static FrameMeasurement measurement(Shot shot) {
    return shot.exposure().measurement().orElseThrow();
  }

  private static SceneSky sky(List<Shot> shots, StaticReport statics) {
    List<SkyShot> seen = new ArrayList<>();
    for (int i = 0; i < shots.size(); i++) {
      Shot shot = shots.get(i);
      seen.add(
          new SkyShot(
              statics.fields().get(i),
              shot.midSeconds(),
              shot.clockStepSeconds(),
              shot.exposureSeconds(),
              shot.focalLengthPx(),
              shot.facts().orientation()));
    }
    return Registration.of(seen);
  }

  private List<Judged> judged(
      List<Shot> shots,
      StaticReport statics,
      List<Optional<FieldShape>> shapes,
      Optional<SceneReference> reference,
      SceneSky sky) {
    List<FrameMeasurement> cleaned = new ArrayList<>();
    List<FrameEvidence> evidence = new ArrayList<>();
    List<Integer> places = new ArrayList<>();
    for (int i = 0; i < shots.size(); i++) {
      FrameMeasurement before = measurement(shots.get(i));
      StarField field = statics.fields().get(i);
      cleaned.add(
          new FrameMeasurement(before.facts(), before.linearity(), field, before.thumbnail()));
      if (shapes.get(i).isPresent()) {
        evidence.add(evidence(shots.get(i), cleaned.get(i), reference.orElseThrow()));
        places.add(i);
      }
    }
    List<rondure.blur.Judged> answers =
        evidence.isEmpty()
            ? List.of()
            : attribution.judge(new SceneEvidence(evidence, places, sky));
    List<Judged> judged = new ArrayList<>();
    Iterator<rondure.blur.Judged> next = answers.iterator();
    for (int i = 0; i < shots.size(); i++) {
      judged.add(
          shapes.get(i).isPresent()
              ? measured(shots.get(i), cleaned.get(i), shapes.get(i).get(), reference, next.next())
              : tooFew(shots.get(i), cleaned.get(i), i, statics));
    }
    return judged;
  }

  private Judged tooFew(Shot shot, FrameMeasurement cleaned, int index, StaticReport statics) {
    String reason =
        TooFewStars.reason(
            cleaned.field(), statics.removed().get(index), statics.finding(), settings);
    Ruling ruling = new Ruling(FrameStatus.TOO_FEW_STARS, reason);
    return new Judged(
        shot,
        cleaned,
        Optional.of(ruling),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  private Judged measured(
      Shot shot,
      FrameMeasurement cleaned,
      FieldShape shape,
      Optional<SceneReference> reference,
      rondure.blur.Judged answer) {
    Verdict verdict = DisplayAngles.of(answer.verdict(), shot.facts().orientation());
    boolean keep = keepRule.keeps(shape, reference.orElseThrow(), verdict);
    return new Judged(
        shot,
        cleaned,
        Optional.empty(),
        Optional.of(FrameShapes.of(shot, cleaned.field(), shape)),
        Optional.of(verdict),
        answer.budget(),
        keep ? Optional.of(Grade.KEEP) : Optional.empty());
  }

  private static FrameEvidence evidence(
      Shot shot, FrameMeasurement measurement, SceneReference scene) {
    Optional<Double> fNumber = shot.facts().fNumber().map(Fact::value).filter(n -> n > 0);
    Optional<Double> pitch = shot.facts().pixelPitchMicrons().map(Fact::value).filter(p -> p > 0);
    return new FrameEvidence(
        measurement.field(),
        shot.exposureSeconds(),
        shot.focalLengthPx(),
        fNumber.flatMap(n -> pitch.map(p -> BestCase.airyFwhmPx(n, p))),
        shot.gain(),
        measurement.linearity() == Linearity.DEVELOPED,
        scene);
  }
}
