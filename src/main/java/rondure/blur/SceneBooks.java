package rondure.blur;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import rondure.sky.FrameSky;

/**
 * Writes a scene's budgets from its solutions.
 *
 * @param scene the evidence
 * @param paths the camera's, of each frame of the evidence
 * @param known places in it of the solved frames
 * @param nominalSeconds of the solved frames
 * @param exposures what was found of each nominal exposure
 * @param skyProbabilities of the solved frames: that their trails are the sky's
 */
record SceneBooks(
    SceneEvidence scene,
    List<CameraPath> paths,
    List<Integer> known,
    List<Double> nominalSeconds,
    List<ExposureReading> exposures,
    List<Double> skyProbabilities) {

  /** The books of every lens that may explain the scene. */
  private record ByLens(Explanations explained, List<BudgetBooks> books) {
    static ByLens of(Explanations explained) {
      return new ByLens(
          explained, explained.solutions().parallelStream().map(BudgetBooks::new).toList());
    }

    BudgetBooks likeliest() {
      return books.get(0);
    }

    List<LensFinding> lenses() {
      List<LensFinding> lenses = new ArrayList<>();
      for (int i = 0; i < books.size(); i++) {
        lenses.add(books.get(i).lens(explained.shares().get(i)));
      }
      return lenses;
    }

    Rivals budgets(int k, BudgetBooks.Known facts) {
      return new Rivals(
          books.stream().map(one -> one.budget(k, facts)).toList(), explained.shares());
    }
  }

  /**
   * The budgets under either assumption about the core.
   *
   * @param found with the core found
   * @param defocused with every frame out of focus, where that may be
   */
  SceneBudget write(Explanations found, Optional<Explanations> defocused, CoreReading core) {
    ByLens first = ByLens.of(found);
    Optional<ByLens> second = defocused.map(ByLens::of);
    boolean real = core.realProbability() >= 0.5;
    ByLens likelier = real ? first : second.orElse(first);
    List<Optional<FrameBudget>> frames =
        IntStream.range(0, scene.frames().size())
            .parallel()
            .map(known::indexOf)
            .mapToObj(
                k ->
                    k < 0
                        ? Optional.<FrameBudget>empty()
                        : Optional.of(frame(k, first, second, likelier.likeliest())))
            .toList();
    ExplainedShare explained = likelier.likeliest().explained();
    SceneBudget.Shared shared =
        new SceneBudget.Shared(
            core, likelier.lenses(), explained.scene(), exposures, explained.misfitPx2());
    return new SceneBudget(frames, Optional.of(shared));
  }

  private FrameBudget frame(int k, ByLens first, Optional<ByLens> second, BudgetBooks likelier) {
    BudgetBooks.Known facts = facts(k);
    return new FrameBudget(
        first.budgets(k, facts),
        second.map(books -> books.budgets(k, facts)),
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
    CameraPath path = paths.get(known.get(k));
    return new BudgetBooks.Known(
        sky, exposure, path.roundPx2(), path.roundErrorPx2(), evidence.developed());
  }
}
