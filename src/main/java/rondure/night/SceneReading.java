package rondure.night;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import rondure.blur.BestCase;
import rondure.blur.FieldShape;
import rondure.blur.FrameEvidence;
import rondure.blur.SceneEvidence;
import rondure.blur.SceneReference;
import rondure.crew.FrameMeasurement;
import rondure.intake.Fact;
import rondure.intake.Linearity;
import rondure.sky.HotPixels;
import rondure.sky.Registration;
import rondure.sky.SceneFrame;
import rondure.sky.SceneSky;
import rondure.sky.SkyShot;
import rondure.sky.StandingLamps;
import rondure.sky.StaticDetections;
import rondure.sky.StaticReport;
import rondure.stars.StarField;

/**
 * What the frames of one scene show together, before anything is said about causes.
 *
 * @param shots readable frames of the night, in time order
 * @param statics their stars without what stayed on the sensor
 * @param shapes of each frame; empty where it has too few stars
 * @param reference what the frames with a shape have in common, when there are any
 * @param sky how the stars move
 */
record SceneReading(
    List<Shot> shots,
    StaticReport statics,
    List<Optional<FieldShape>> shapes,
    Optional<SceneReference> reference,
    SceneSky sky) {

  static SceneReading of(List<Shot> shots, NightSettings settings) {
    StaticReport statics =
        StaticDetections.examine(shots.stream().map(SceneReading::sceneFrame).toList());
    List<SkyShot> seen = new ArrayList<>();
    for (int i = 0; i < shots.size(); i++) {
      seen.add(skyShot(shots.get(i), statics.fields().get(i)));
    }
    return of(shots, statics, Registration.of(seen), settings);
  }

  /** What each frame shows by itself, when the scene's could not be put together. */
  static SceneReading frameByFrame(List<Shot> shots, NightSettings settings) {
    StaticReport statics =
        new StaticReport(
            StaticReport.Finding.CANNOT_TELL,
            shots.stream().map(shot -> measurement(shot).field()).toList(),
            Collections.nCopies(shots.size(), 0),
            List.of());
    SceneSky sky = SceneSky.unknown(SceneSky.Finding.NOT_SOLVED, Optional.empty(), shots.size());
    return of(shots, statics, sky, settings);
  }

  private static SceneReading of(
      List<Shot> shots, StaticReport statics, SceneSky sky, NightSettings settings) {
    FollowedStars followed = new FollowedStars(sky, statics.fields());
    List<SceneReference.Member> members = new ArrayList<>();
    List<Optional<FieldShape>> shapes = new ArrayList<>();
    for (int i = 0; i < shots.size(); i++) {
      Shot shot = shots.get(i);
      StarField field = statics.fields().get(i);
      int frame = i;
      Optional<FieldShape> shape =
          TooFewStars.applies(field, () -> followed.prove(frame), settings)
              ? Optional.empty()
              : Optional.of(FieldShape.of(field));
      shape.ifPresent(s -> members.add(new SceneReference.Member(s, shot.exposureSeconds())));
      shapes.add(shape);
    }
    Optional<SceneReference> reference =
        members.isEmpty() ? Optional.empty() : Optional.of(SceneReference.of(members));
    return new SceneReading(shots, statics, shapes, reference, sky);
  }

  /** The measurement of a frame, static detections left out. */
  FrameMeasurement measurement(int index) {
    FrameMeasurement before = measurement(shots.get(index));
    StarField field = statics.fields().get(index);
    return new FrameMeasurement(before.facts(), before.linearity(), field, before.thumbnail());
  }

  /** The frames with a shape, as attribution needs them; empty when there are none. */
  Optional<SceneEvidence> evidence() {
    List<FrameEvidence> frames = new ArrayList<>();
    List<Integer> places = new ArrayList<>();
    for (int i = 0; i < shots.size(); i++) {
      if (shapes.get(i).isPresent()) {
        frames.add(evidence(i));
        places.add(i);
      }
    }
    return frames.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new SceneEvidence(
                frames, places, sky, HotPixels.of(statics), StandingLamps.count(statics)));
  }

  private FrameEvidence evidence(int index) {
    Shot shot = shots.get(index);
    Optional<Double> fNumber = shot.facts().fNumber().map(Fact::value).filter(n -> n > 0);
    Optional<Double> pitch = shot.facts().pixelPitchMicrons().map(Fact::value).filter(p -> p > 0);
    return new FrameEvidence(
        statics.fields().get(index),
        shot.exposureSeconds(),
        shot.focalLengthPx(),
        fNumber.flatMap(n -> pitch.map(p -> BestCase.airyFwhmPx(n, p))),
        shot.gain(),
        measurement(shot).linearity() == Linearity.DEVELOPED,
        reference.orElseThrow());
  }

  private static SceneFrame sceneFrame(Shot shot) {
    return new SceneFrame(measurement(shot).field(), shot.midSeconds(), shot.skySpeedPxPerS());
  }

  private static SkyShot skyShot(Shot shot, StarField field) {
    return new SkyShot(
        field,
        shot.midSeconds(),
        shot.clockStepSeconds(),
        shot.exposureSeconds(),
        shot.focalLengthPx(),
        shot.facts().orientation());
  }

  private static FrameMeasurement measurement(Shot shot) {
    return shot.exposure().measurement().orElseThrow();
  }
}
