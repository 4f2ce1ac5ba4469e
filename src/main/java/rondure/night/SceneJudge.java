package rondure.night;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import rondure.blur.Attribution;
import rondure.blur.BestCase;
import rondure.blur.FieldShape;
import rondure.blur.FrameEvidence;
import rondure.blur.SceneReference;
import rondure.blur.Verdict;
import rondure.crew.FrameMeasurement;
import rondure.intake.Fact;
import rondure.intake.Linearity;
import rondure.sky.SceneFrame;
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
    // Frames are judged independently of each other: any order gives the same verdicts.
    List<Judged> judged =
        IntStream.range(0, shots.size())
            .parallel()
            .mapToObj(i -> judged(shots.get(i), i, statics, shapes.get(i), reference))
            .toList();
    return new Judgement(judged, reference, statics);
  }

  private SceneFrame sceneFrame(Shot shot) {
    return new SceneFrame(measurement(shot).field(), shot.midSeconds(), shot.skySpeedPxPerS());
  }

  private static FrameMeasurement measurement(Shot shot) {
    return shot.exposure().measurement().orElseThrow();
  }

  private Judged judged(
      Shot shot,
      int index,
      StaticReport statics,
      Optional<FieldShape> shape,
      Optional<SceneReference> reference) {
    StarField field = statics.fields().get(index);
    FrameMeasurement before = measurement(shot);
    FrameMeasurement cleaned =
        new FrameMeasurement(before.facts(), before.linearity(), field, before.thumbnail());
    if (shape.isEmpty()) {
      String reason =
          TooFewStars.reason(field, statics.removed().get(index), statics.finding(), settings);
      Ruling ruling = new Ruling(FrameStatus.TOO_FEW_STARS, reason);
      return new Judged(
          shot, cleaned, Optional.of(ruling), Optional.empty(), Optional.empty(), Optional.empty());
    }
    SceneReference scene = reference.orElseThrow();
    Verdict verdict =
        DisplayAngles.of(
            attribution.judge(evidence(shot, cleaned, scene)), shot.facts().orientation());
    boolean keep = keepRule.keeps(shape.get(), scene, verdict);
    return new Judged(
        shot,
        cleaned,
        Optional.empty(),
        Optional.of(FrameShapes.of(shot, field, shape.get())),
        Optional.of(verdict),
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
        measurement.linearity() == Linearity.DEVELOPED,
        scene);
  }
}
