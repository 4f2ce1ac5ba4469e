package rondure.blur;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Judges as the program does and remembers the budgets it judged by, to fit their leeway. */
public final class JudgedBudgets implements Attribution {
  private final SceneAttribution attribution = new SceneAttribution(AttributionSettings.defaults());
  private final List<Optional<Known>> known = new ArrayList<>();

  /** A frame's budget and light. */
  public record Known(Ground ground, FrameBudget budget, CoreReading core, LightMissing missing) {

    /**
     * Probabilities with another leeway.
     *
     * @param coreShare see {@link Leeway}
     * @param termShare see {@link Leeway}
     * @param floorShare see {@link Leeway}
     */
    public Map<Cause, Double> probabilities(double coreShare, double termShare, double floorShare) {
      Leeway leeway = new Leeway(coreShare, termShare, floorShare, 1);
      BudgetOdds odds = new BudgetOdds(AttributionSettings.defaults(), leeway);
      return Calibration.fitted(ground).of(odds.of(budget, core, missing));
    }
  }

  @Override
  public SceneVerdicts judge(SceneEvidence scene) {
    SceneBudget budget = SceneBudget.of(scene);
    List<FrameLight> lights =
        FrameLight.withHalos(Transparency.of(scene), Halo.of(scene, CameraPath.of(scene)));
    long count = budget.frames().stream().flatMap(Optional::stream).count();
    for (int i = 0; i < scene.frames().size(); i++) {
      LightMissing missing = LightMissing.of(lights.get(i));
      Ground ground = Ground.ofBudget(scene.frames().get(i), count);
      known.add(
          budget
              .frames()
              .get(i)
              .map(own -> new Known(ground, own, budget.shared().orElseThrow().core(), missing)));
    }
    return attribution.judge(scene);
  }

  /** One for each judged frame so far, in order. */
  public List<Optional<Known>> known() {
    return List.copyOf(known);
  }
}
