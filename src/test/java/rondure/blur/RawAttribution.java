package rondure.blur;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Judges as the program does, odds left uncalibrated, and remembers what verdicts rest on. */
public final class RawAttribution implements Attribution {
  private final SceneAttribution attribution =
      new SceneAttribution(AttributionSettings.defaults(), ground -> Calibration.NONE);
  private final List<Raw> frames = new ArrayList<>();

  /** What a frame was judged by, and how. */
  public record Raw(Ground ground, Map<Cause, Double> odds) {}

  @Override
  public SceneVerdicts judge(SceneEvidence scene) {
    SceneVerdicts verdicts = attribution.judge(scene);
    long budgets = verdicts.frames().stream().filter(f -> f.budget().isPresent()).count();
    for (int i = 0; i < scene.frames().size(); i++) {
      FrameEvidence frame = scene.frames().get(i);
      Judged judged = verdicts.frames().get(i);
      boolean budget = judged.budget().isPresent();
      Ground ground = budget ? Ground.ofBudget(frame, budgets) : Ground.ofOneFrame(frame);
      frames.add(new Raw(ground, judged.verdict().probabilities()));
    }
    return verdicts;
  }

  /** One for each judged frame so far, in order. */
  public List<Raw> frames() {
    return List.copyOf(frames);
  }
}
