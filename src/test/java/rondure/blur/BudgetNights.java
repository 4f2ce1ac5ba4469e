package rondure.blur;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import rondure.sim.FrameTruth;
import rondure.sim.NightPlan;
import rondure.sim.NightSimulator;
import rondure.sky.Camera;
import rondure.sky.Direction;
import rondure.sky.FrameSky;
import rondure.sky.Registration;
import rondure.sky.Rotation;
import rondure.sky.SceneSky;
import rondure.sky.SkyShot;
import rondure.sky.Spin;
import rondure.sky.StarTracks;
import rondure.stars.StarField;
import rondure.testing.SimNight;
import rondure.testing.TruthFields;

/** Scenes of simulated nights whose registration is the simulator's truth. */
final class BudgetNights {
  private BudgetNights() {}

  /** A scene and what is true of its frames. */
  record Night(SceneEvidence evidence, List<FrameTruth> truths) {

    SceneBudget budget() {
      return SceneBudget.of(evidence);
    }
  }

  /** Star fields made from the truth and measuring noise. */
  static Night ofTruth(NightPlan plan) {
    NightSimulator simulator = new NightSimulator(plan);
    List<FrameTruth> truths =
        IntStream.rangeClosed(1, simulator.frameCount()).mapToObj(simulator::truth).toList();
    return night(plan, truths, i -> TruthFields.of(plan, truths.get(i), plan.seed()));
  }

  /** The same, registered by their stars. */
  static Night registered(NightPlan plan) {
    return registered(plan, ofTruth(plan));
  }

  /** A scene registered by its stars. */
  static Night registered(NightPlan plan, Night night) {
    SceneEvidence evidence = night.evidence();
    List<SkyShot> shots = new ArrayList<>();
    for (int i = 0; i < night.truths().size(); i++) {
      shots.add(TruthFields.shot(plan, night.truths().get(i), evidence.frames().get(i).field()));
    }
    SceneSky sky = Registration.of(shots);
    return new Night(new SceneEvidence(evidence.frames(), evidence.places(), sky), night.truths());
  }

  /** Rendered and measured frames. */
  static Night rendered(NightPlan plan) {
    NightSimulator simulator = new NightSimulator(plan);
    List<FrameTruth> truths =
        IntStream.rangeClosed(1, simulator.frameCount()).mapToObj(simulator::truth).toList();
    return night(plan, truths, i -> SimNight.measure(plan, i + 1));
  }

  private static Night night(
      NightPlan plan, List<FrameTruth> truths, IntFunction<StarField> fieldOf) {
    List<StarField> fields = IntStream.range(0, truths.size()).mapToObj(fieldOf).toList();
    List<SceneReference.Member> members = new ArrayList<>();
    for (int i = 0; i < fields.size(); i++) {
      Optional<Double> seconds = Optional.of(truths.get(i).nominalSeconds());
      members.add(new SceneReference.Member(FieldShape.of(fields.get(i)), seconds));
    }
    SceneReference reference = SceneReference.of(members);
    List<FrameEvidence> frames = new ArrayList<>();
    for (int i = 0; i < fields.size(); i++) {
      SkyShot shot = TruthFields.shot(plan, truths.get(i), fields.get(i));
      frames.add(
          new FrameEvidence(
              fields.get(i),
              shot.exposureSeconds(),
              shot.focalLengthPx(),
              Optional.of(
                  BestCase.airyFwhmPx(plan.lens().fNumber(), plan.camera().pixelPitchMicrons())),
              Optional.empty(),
              false,
              reference));
    }
    List<Integer> places = IntStream.range(0, frames.size()).boxed().toList();
    return new Night(new SceneEvidence(frames, places, sky(plan, truths)), truths);
  }

  private static SceneSky sky(NightPlan plan, List<FrameTruth> truths) {
    Camera camera =
        Camera.rectilinear(
            plan.pixelsPerRadian(), plan.camera().widthPx(), plan.camera().heightPx());
    List<FrameSky> frames = new ArrayList<>();
    for (FrameTruth truth : truths) {
      Direction pole = Direction.of(truth.poleX(), truth.poleY(), truth.poleZ());
      frames.add(
          new FrameSky(
              Optional.of(Rotation.NONE), Optional.of(Spin.ofSky(pole)), Spin.NONE, 5e-7, 0));
    }
    FrameTruth first = truths.get(0);
    Direction pole = Direction.of(first.poleX(), first.poleY(), first.poleZ());
    return new SceneSky(
        SceneSky.Finding.SKY_TURNS,
        Optional.of(camera),
        false,
        Optional.of(pole),
        0.3,
        frames,
        StarTracks.NONE);
  }
}
