package rondure.night;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import rondure.blur.SceneReference;

/**
 * Frames of one camera, lens, focal length and size on one night: explained together, as lens and
 * core are the same wherever it looked, and divided into scenes by its aims.
 *
 * @param key what they have in common
 * @param places indices into the book's frames, time order
 * @param judgement of these frames, in the same order
 */
record Gear(SceneKey key, List<Integer> places, SceneJudge.Judgement judgement) {

  /**
   * The scenes of each gear.
   *
   * @param scenes of one gear, in time order, numbered over the whole set by their first frames
   * @param whole all of them as one
   */
  record Divided(Gear gear, List<Scene> scenes, Scene whole) {
    /** Its scenes, as a sentence names them. */
    String name() {
      String numbers =
          scenes.stream().map(s -> Integer.toString(s.number())).collect(Collectors.joining(", "));
      return (isOne() ? "Scene " : "Scenes ") + numbers;
    }

    boolean isOne() {
      return scenes.size() == 1;
    }
  }

  /** Where an aim begins, in the book. */
  private record Start(int gear, int aim, int place) {}

  static List<Divided> divided(List<Gear> gears) {
    List<Start> starts = new ArrayList<>();
    for (int g = 0; g < gears.size(); g++) {
      List<SceneJudge.Aimed> aims = gears.get(g).judgement.aims();
      for (int a = 0; a < aims.size(); a++) {
        starts.add(new Start(g, a, gears.get(g).places.get(aims.get(a).from())));
      }
    }
    starts.sort(Comparator.comparingInt(Start::place));
    List<Divided> all = new ArrayList<>();
    for (int g = 0; g < gears.size(); g++) {
      Gear gear = gears.get(g);
      List<Scene> scenes = new ArrayList<>();
      for (int s = 0; s < starts.size(); s++) {
        if (starts.get(s).gear() == g) {
          scenes.add(gear.scene(s + 1, gear.judgement.aims().get(starts.get(s).aim())));
        }
      }
      Scene first = scenes.get(0);
      SceneJudge.Aimed whole = new SceneJudge.Aimed(0, gear.places.size(), first.solution());
      all.add(new Divided(gear, List.copyOf(scenes), gear.scene(first.number(), whole)));
    }
    return all;
  }

  private Scene scene(int number, SceneJudge.Aimed aim) {
    return new Scene(
        number,
        key.nightIndex(),
        key.cameraName(),
        key.focalLengthMm(),
        places.subList(aim.from(), aim.until()),
        judgement.reference().map(SceneReference::sharpestFwhmPx),
        aim.solution());
  }
}
