package rondure.blur;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * The blur budgets of a scene.
 *
 * @param frames one for each frame of the evidence, in order; empty where the sky's motion is not
 *     known
 * @param shared what the frames have in common; empty when no frame has a budget
 */
public record SceneBudget(List<Optional<FrameBudget>> frames, Optional<Shared> shared) {

  /**
   * What the frames of a scene have in common.
   *
   * @param core the core and how far it may be trusted
   * @param lenses what the lens does over the field: the likeliest first, then others that may
   *     explain the scene as well
   * @param explainedShare share of the tensors' variation over field and frames, beyond their
   *     measuring errors, that the budget explains, 0 to 1: variation is what the best single round
   *     star leaves
   * @param exposures one for each nominal exposure
   * @param misfitPx2 what the smooth model leaves in the zones of a frame, r.m.s. per component
   */
  public record Shared(
      CoreReading core,
      List<LensFinding> lenses,
      double explainedShare,
      List<ExposureReading> exposures,
      double misfitPx2) {
    public Shared {
      Objects.requireNonNull(core, "core");
      lenses = List.copyOf(lenses);
      exposures = List.copyOf(exposures);
      if (lenses.isEmpty()) {
        throw new IllegalArgumentException("a scene's budget needs a lens");
      }
    }

    /** The likeliest lens. */
    public LensSurface lens() {
      return lenses.get(0).surface();
    }
  }

  public SceneBudget {
    frames = List.copyOf(frames);
    Objects.requireNonNull(shared, "shared");
  }

  /** No frame has a budget. */
  static SceneBudget none(int frames) {
    return new SceneBudget(
        java.util.Collections.nCopies(frames, Optional.empty()), Optional.empty());
  }

  /** Shares out the blur of a scene's frames; a pure function. */
  public static SceneBudget of(SceneEvidence scene) {
    return of(scene, AttributionSettings.defaults());
  }

  /** The same with other settings. */
  static SceneBudget of(SceneEvidence scene, AttributionSettings settings) {
    return of(scene, settings, CameraPath.of(scene));
  }

  /**
   * The same where the camera's paths were read already.
   *
   * @param paths one for each frame
   */
  static SceneBudget of(SceneEvidence scene, AttributionSettings settings, List<CameraPath> paths) {
    return new BudgetMaker(scene, settings, paths).make();
  }
}
