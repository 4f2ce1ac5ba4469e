package rondure.testing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rondure.sim.FrameTruth;
import rondure.sim.StarTruth;
import rondure.sky.SceneSky;
import rondure.sky.StarTracks;
import rondure.stars.Star;
import rondure.stars.StarField;

/** Which measured stars are which star of the simulator's catalogue. */
public final class SimTracks {
  private static final double NEAR_PX = 2.5;

  private SimTracks() {}

  /** A scene's sky of which only the tracks are known, by the truth. */
  public static SceneSky sky(List<StarField> fields, List<FrameTruth> truths) {
    Map<Integer, Integer> numbers = new HashMap<>();
    List<int[]> byFrame = new ArrayList<>();
    for (int i = 0; i < fields.size(); i++) {
      byFrame.add(tracks(fields.get(i).stars(), truths.get(i).stars(), numbers));
    }
    SceneSky unknown =
        SceneSky.unknown(SceneSky.Finding.CLOCK_UNKNOWN, Optional.empty(), fields.size());
    return new SceneSky(
        unknown.finding(),
        unknown.camera(),
        false,
        unknown.pole(),
        unknown.poleErrorDeg(),
        unknown.frames(),
        new StarTracks(numbers.size(), byFrame));
  }

  private static int[] tracks(
      List<Star> stars, List<StarTruth> truths, Map<Integer, Integer> numbers) {
    int[] tracks = new int[stars.size()];
    Arrays.fill(tracks, -1);
    boolean[] taken = new boolean[stars.size()];
    for (StarTruth truth : truths) {
      int nearest = -1;
      double best = NEAR_PX;
      for (int j = 0; j < tracks.length; j++) {
        double away =
            Math.hypot(stars.get(j).xPx() - truth.xPx(), stars.get(j).yPx() - truth.yPx());
        if (away < best) {
          best = away;
          nearest = j;
        }
      }
      if (nearest >= 0 && !taken[nearest]) {
        taken[nearest] = true;
        tracks[nearest] = numbers.computeIfAbsent(truth.number(), number -> numbers.size());
      }
    }
    return tracks;
  }
}
