package rondure.blur;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;

/**
 * Solves a scene: shared lens and core from up to 40 of its frames, then every frame behind them.
 *
 * <p>First all frames are taken as unshaken but for a free uniform spin-2; the frames in which that
 * proves a shake are then solved again, with their defocus held near that of the frames before and
 * after and the round part of the shake free, and the lens is found without them where enough
 * others are left.
 */
final class SceneSolver {
  private static final int MOST_SHARPEST = 5;
  private static final int LEAST_CALM = 3;

  private final List<FrameModel> models;
  private final CoreAssumption core;
  private final LensSearch search;
  private final double misfit;
  private final double[] still;
  private final List<Integer> sharpestFirst;

  /**
   * @param misfit see {@link SharedMisfit}
   */
  SceneSolver(List<FrameModel> models, CoreAssumption core, double misfit) {
    this.misfit = misfit;
    this.models = models;
    this.core = core;
    search = new LensSearch(models, core, misfit);
    still = models.stream().mapToDouble(m -> m.stars().stillRoundPx2(m.lengthening())).toArray();
    sharpestFirst = sharpestFirst();
  }

  /**
   * Each of two images is trailed by a part of the exposure only, so that taking off the whole
   * trail would leave less than the core: such frames say nothing of what the set shares.
   */
  private List<Integer> sharpestFirst() {
    List<Integer> all =
        IntStream.range(0, models.size())
            .boxed()
            .sorted(Comparator.comparingDouble((Integer j) -> still[j]))
            .toList();
    List<Integer> whole = all.stream().filter(j -> models.get(j).whole()).toList();
    return whole.isEmpty() ? all : whole;
  }

  SceneSolution solve() {
    OwnExpectations calm = OwnExpectations.calm(models, nearFocus(), misfit);
    double[] start = new double[FrameModel.SHARED];
    start[FrameModel.CORE] = core.startPx2(still[sharpestFirst.get(0)]);
    List<Integer> together = picked(sharpestFirst);
    double[] shared = search.anew(together, calm, start, ownStarts(start));
    List<double[]> own = each(shared, calm, ownStarts(shared));
    List<Shake> shakes = shakes(shared, own);
    if (shakes.stream().allMatch(s -> s.kind() == Shake.Kind.NONE)) {
      return new SceneSolution(models, shared, own, shakes, expected(calm, together));
    }
    List<Integer> calmOnes = sharpestFirst.stream().filter(j -> !shakes.get(j).proven()).toList();
    boolean fewCalm = calmOnes.size() < LEAST_CALM;
    OwnExpectations informed = calm.with(shakes, own, models.get(0).lens(shared), fewCalm);
    List<Integer> asked = picked(fewCalm ? sharpestFirst : calmOnes);
    if (!fewCalm && core.usualPx2().isEmpty() && shakes.get(sharpestFirst.get(0)).proven()) {
      // The start was the core of a frame that moved less than was foretold: none that exists.
      start[FrameModel.CORE] = still[calmOnes.get(0)];
      shared = search.anew(asked, informed, start, ownStarts(start));
      own = each(shared, informed, ownStarts(shared));
    }
    List<double[]> starts = new ArrayList<>();
    for (int j = 0; j < own.size(); j++) {
      starts.add(informed.start(j, own.get(j)));
    }
    double[] refined = search.refined(asked, informed, shared, starts);
    List<double[]> again = each(refined, informed, starts);
    return new SceneSolution(models, refined, again, shakes, expected(informed, asked));
  }

  private NearFocus nearFocus() {
    Set<Integer> frames = core.usualPx2().isPresent() ? Set.of() : new HashSet<>(sharpest());
    return new NearFocus(frames, NearFocus.Firmness.EXPECTED);
  }

  /** Up to so many frames as are solved together: the sharpest, and others spread over the set. */
  private static List<Integer> picked(List<Integer> candidates) {
    if (candidates.size() <= LensSearch.MOST_FRAMES) {
      return candidates.stream().sorted().toList();
    }
    Set<Integer> picked = new TreeSet<>(candidates.subList(0, 2 * MOST_SHARPEST));
    List<Integer> rest = candidates.stream().filter(j -> !picked.contains(j)).sorted().toList();
    int wanted = LensSearch.MOST_FRAMES - picked.size();
    for (int k = 0; k < wanted; k++) {
      picked.add(rest.get((int) ((k + 0.5) * rest.size() / wanted)));
    }
    return List.copyOf(picked);
  }

  /** Discs that would widen the core to each frame's stars. */
  private List<double[]> ownStarts(double[] shared) {
    List<double[]> starts = new ArrayList<>();
    for (double round : still) {
      double[] own = new double[FrameModel.OWN];
      own[FrameModel.DISC] = 4 * Math.sqrt(Math.max(0.03, round - shared[FrameModel.CORE]));
      starts.add(own);
    }
    return starts;
  }

  private List<double[]> each(double[] shared, OwnExpectations expected, List<double[]> starts) {
    List<double[]> own = new ArrayList<>();
    for (int j = 0; j < models.size(); j++) {
      own.add(OwnFit.of(models.get(j), shared, expected.of(j), starts.get(j)).own());
    }
    return own;
  }

  private List<Shake> shakes(double[] shared, List<double[]> own) {
    List<Shake> shakes = new ArrayList<>();
    CommonSmear common = CommonSmear.of(own);
    for (int j = 0; j < models.size(); j++) {
      double excess = Math.max(0, still[j] - shared[FrameModel.CORE]);
      double spin2 = common.beyondPx2(own.get(j));
      shakes.add(Shake.of(models.get(j), shared, own.get(j), spin2, excess));
    }
    return shakes;
  }

  /** The solution and the other lenses that fit about as well. */
  Explanations explained() {
    SceneSolution first = yielding(solve());
    if (!LensRivals.matter(first.shared())) {
      return Explanations.only(first);
    }
    List<SceneSolution> all = new ArrayList<>(List.of(first));
    all.addAll(rivals(first, true));
    List<FrameModel> steep = models.stream().map(m -> m.with(ComaGrowth.STEEP)).toList();
    all.addAll(new SceneSolver(steep, core, misfit).rivals(first, false));
    if (ComaTails.seen(first)) {
      all.add(comatic(first));
      all.add(new SceneSolver(steep, core, misfit).comatic(first));
    }
    return Explanations.of(all, misfit);
  }

  /** The solution, the sharpest frames out of focus where the field proves them so. */
  private SceneSolution yielding(SceneSolution first) {
    if (!first.expectations().focusDoubted(first.allOwn())) {
      return first;
    }
    SceneSolution held = near(first, NearFocus.Firmness.HELD);
    SceneSolution free = near(first, NearFocus.Firmness.LOOSE);
    return ProvenDefocus.between(held, free, misfit) ? free : first;
  }

  private SceneSolution near(SceneSolution first, NearFocus.Firmness firmness) {
    OwnExpectations asked = first.expectations().with(firmness);
    double[] shared = search.refined(first.together(), asked, first.shared(), first.allOwn());
    List<double[]> own = each(shared, asked, first.allOwn());
    return new SceneSolution(
        models, shared, own, first.shakes(), expected(asked, first.together()));
  }

  /** The lens whose field is flat, so that coma alone widens its corners. */
  private SceneSolution comatic(SceneSolution first) {
    OwnExpectations expected = first.expectations();
    double[] shared = search.comatic(first.together(), expected, first.shared(), first.allOwn());
    List<double[]> own = each(shared, expected, first.allOwn());
    return new SceneSolution(
        models, shared, own, first.shakes(), expected(expected, first.together()));
  }

  /** Other lenses of this solver's kind for the same frames, shaken or not as found. */
  private List<SceneSolution> rivals(SceneSolution first, boolean settled) {
    OwnExpectations expected = first.expectations();
    List<SceneSolution> rivals = new ArrayList<>();
    for (double[] shared :
        search.rivals(first.together(), expected, first.shared(), first.allOwn(), settled)) {
      List<double[]> own = each(shared, expected, first.allOwn());
      rivals.add(
          new SceneSolution(
              models, shared, own, first.shakes(), expected(expected, first.together())));
    }
    return rivals;
  }

  private SceneSolution.Expected expected(OwnExpectations own, List<Integer> together) {
    return new SceneSolution.Expected(search.sharedPrior(), own, together);
  }

  /** Frames whose stars are nearest to the core, sharpest first. */
  List<Integer> sharpest() {
    int count = Math.max(1, Math.min(MOST_SHARPEST, models.size() / 3));
    return sharpestFirst.subList(0, count);
  }
}
