package rondure.blur;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import rondure.sim.FrameTruth;
import rondure.sim.NightPlan;
import rondure.sim.NightSimulator;
import rondure.sim.SimFrame;
import rondure.stars.StarField;
import rondure.testing.SimNight;
import rondure.testing.SimTracks;

/** A simulated scene, measured, with the truth about it; stars are matched by the truth. */
record SimScene(NightPlan plan, List<StarField> fields, List<FrameTruth> truths) {

  private record Measured(StarField field, FrameTruth truth) {}

  /** Renders and measures all frames of a plan. */
  static SimScene of(String... changes) {
    NightPlan plan = SimNight.plan(changes);
    NightSimulator simulator = new NightSimulator(plan);
    List<Measured> frames =
        IntStream.rangeClosed(1, simulator.frameCount())
            .mapToObj(
                number -> {
                  SimFrame frame = simulator.render(number);
                  return new Measured(SimNight.measure(frame), frame.truth());
                })
            .toList();
    return new SimScene(
        plan,
        frames.stream().map(Measured::field).toList(),
        frames.stream().map(Measured::truth).toList());
  }

  /** With the gain that exposure, ISO and f-number tell. */
  SceneEvidence evidence(boolean gainsKnown) {
    List<SceneReference.Member> members =
        IntStream.range(0, fields.size())
            .mapToObj(
                i ->
                    new SceneReference.Member(
                        FieldShape.of(fields.get(i)), Optional.of(truths.get(i).nominalSeconds())))
            .toList();
    SceneReference reference = SceneReference.of(members);
    List<FrameEvidence> frames =
        IntStream.range(0, fields.size()).mapToObj(i -> frame(i, gainsKnown, reference)).toList();
    List<Integer> places = IntStream.range(0, fields.size()).boxed().toList();
    return new SceneEvidence(frames, places, SimTracks.sky(fields, truths));
  }

  private FrameEvidence frame(int i, boolean gainsKnown, SceneReference reference) {
    double seconds = truths.get(i).nominalSeconds();
    return new FrameEvidence(
        fields.get(i),
        Optional.of(seconds),
        Optional.of(plan.lens().focalLengthMm() * 1000 / plan.camera().pixelPitchMicrons()),
        Optional.empty(),
        gainsKnown ? Optional.of(seconds) : Optional.empty(),
        false,
        reference);
  }
}
