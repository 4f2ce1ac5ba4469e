package rondure.report;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rondure.night.Lookalikes;
import rondure.night.NightBook;
import rondure.night.NightFrame;
import rondure.night.Scene;

/** Where each frame stands among the others of its scene, and among those that look like it. */
final class Standings {
  private static final Standing NONE =
      new Standing(Optional.empty(), Optional.empty(), Optional.empty());

  private final Map<String, Integer> ranks = new HashMap<>();
  private final Map<String, Integer> groups = new HashMap<>();
  private final List<NightFrame> bests = new ArrayList<>();

  /**
   * Where one frame stands.
   *
   * @param rankInScene 1 = best; in the order of the report
   * @param alikeGroup number of the group of frames that look alike, from 1 over the whole set
   * @param bestOfAlike whether it is the best of its group
   */
  record Standing(
      Optional<Integer> rankInScene, Optional<Integer> alikeGroup, Optional<Boolean> bestOfAlike) {}

  private Standings(NightBook book) {
    for (Scene scene : book.scenes()) {
      List<NightFrame> ordered = Ranking.bestFirst(book, scene);
      for (int i = 0; i < ordered.size(); i++) {
        ranks.put(ordered.get(i).file(), i + 1);
      }
    }
    for (Lookalikes.Group group : Lookalikes.of(book)) {
      List<NightFrame> frames = group.frames().stream().map(book.frames()::get).toList();
      bests.add(frames.stream().min(Ranking.BEST_FIRST).orElseThrow());
      frames.forEach(frame -> groups.put(frame.file(), bests.size()));
    }
  }

  static Standings of(NightBook book) {
    return new Standings(book);
  }

  Standing of(NightFrame frame) {
    Optional<Integer> rank = Optional.ofNullable(ranks.get(frame.file()));
    Optional<Integer> group = Optional.ofNullable(groups.get(frame.file()));
    return rank.isEmpty()
        ? NONE
        : new Standing(rank, group, group.map(g -> bests.get(g - 1).file().equals(frame.file())));
  }

  /** The best of each group of a scene, in time order. */
  List<NightFrame> bestOfAlike(Scene scene) {
    return bests.stream()
        .filter(frame -> frame.sceneNumber().equals(Optional.of(scene.number())))
        .toList();
  }
}
