package rondure.blur;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Judges as the program does and remembers the budgets it judged by, for calibration. */
public final class JudgedBudgets implements Attribution {
  private final SceneAttribution attribution = new SceneAttribution(AttributionSettings.defaults());
  private final List<Optional<Known>> known = new ArrayList<>();

  /** A frame's budget and light. */
  public record Known(FrameBudget budget, CoreReading core, LightMissing missing) {

    /**
     * Odds with another leeway.
     *
     * @param coreShare see {@link Leeway}
     * @param termShare see {@link Leeway}
     * @param floorShare see {@link Leeway}
     */
    public Map<Cause, Double> odds(double coreShare, double termShare, double floorShare) {
      Leeway leeway = new Leeway(coreShare, termShare, floorShare, 1, 0);
      return new BudgetOdds(AttributionSettings.defaults(), leeway).of(budget, core, missing);
    }
  }

  @Override
  public SceneVerdicts judge(SceneEvidence scene) {
    SceneBudget budget = SceneBudget.of(scene);
    List<FrameLight> lights =
        FrameLight.withHalos(Transparency.of(scene), Halo.of(scene, CameraPath.of(scene)));
    for (int i = 0; i < scene.frames().size(); i++) {
      LightMissing missing = LightMissing.of(lights.get(i));
      known.add(
          budget
              .frames()
              .get(i)
              .map(own -> new Known(own, budget.shared().orElseThrow().core(), missing)));
    }
    return attribution.judge(scene);
  }

  /** One for each judged frame so far, in order. */
  public List<Optional<Known>> known() {
    return List.copyOf(known);
  }
}
