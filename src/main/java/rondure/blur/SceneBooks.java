package rondure.blur;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rondure.sky.FrameSky;

/**
 * Writes a scene's budgets from its solutions.
 *
 * @param scene the evidence
 * @param known places in it of the solved frames
 * @param nominalSeconds of the solved frames
 * @param exposures what was found of each nominal exposure
 * @param skyProbabilities of the solved frames: that their trails are the sky's
 */
record SceneBooks(
    SceneEvidence scene,
    List<Integer> known,
    List<Double> nominalSeconds,
    List<ExposureReading> exposures,
    List<Double> skyProbabilities) {

  /**
   * The budgets under either assumption about the core.
   *
   * @param found with the core found
   * @param defocused with every frame out of focus, where that may be
   */
  SceneBudget write(SceneSolution found, Optional<SceneSolution> defocused, CoreReading core) {
    boolean real = core.realProbability() >= 0.5 || defocused.isEmpty();
    BudgetBooks first = new BudgetBooks(found);
    Optional<BudgetBooks> second = defocused.map(BudgetBooks::new);
    BudgetBooks likelier = real ? first : second.orElse(first);
    List<Optional<FrameBudget>> frames = new ArrayList<>();
    for (int i = 0; i < scene.frames().size(); i++) {
      int k = known.indexOf(i);
      frames.add(k < 0 ? Optional.empty() : Optional.of(frame(k, first, second, likelier)));
    }
    SceneSolution solution = real ? found : defocused.orElse(found);
    ExplainedShare explained = likelier.explained();
    SceneBudget.Shared shared =
        new SceneBudget.Shared(
            core, solution.lens(), explained.scene(), exposures, explained.misfitPx2());
    return new SceneBudget(frames, Optional.of(shared));
  }

  private FrameBudget frame(
      int k, BudgetBooks first, Optional<BudgetBooks> second, BudgetBooks likelier) {
    BudgetBooks.Known facts = facts(k);
    return new FrameBudget(
        first.budget(k, facts),
        second.map(books -> books.budget(k, facts)),
        likelier.meanDiscPx(k),
        likelier.meanDiscErrorPx(k),
        likelier.smear(k),
        likelier.tradeablePx2(k),
        skyProbabilities.get(k));
  }

  private BudgetBooks.Known facts(int k) {
    FrameEvidence evidence = scene.frames().get(known.get(k));
    FrameSky sky = scene.sky().frames().get(scene.places().get(known.get(k)));
    double nominal = nominalSeconds.get(k);
    ExposureReading exposure =
        exposures.stream().filter(e -> e.nominalSeconds() == nominal).findFirst().orElseThrow();
    double path = CameraPath.of(evidence, FieldShape.of(evidence.field())).roundPx2();
    return new BudgetBooks.Known(sky, exposure, path, evidence.developed());
  }
}
