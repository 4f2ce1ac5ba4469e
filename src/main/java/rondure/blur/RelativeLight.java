package rondure.blur;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import rondure.base.RobustStats;
import rondure.sky.StarTracks;
import rondure.stars.Star;

/** How much light the frames of a scene gathered of the same stars, over the scene's median. */
final class RelativeLight {
  private static final int ROUNDS = 4;

  /** Light that changes less than this is the sky's or the air's doing. */
  private static final double SAME_LIGHT = 1.3;

  private RelativeLight() {}

  /** One for each measured frame; 1 where no star tells. */
  static double[] of(SceneEvidence scene) {
    int frames = scene.frames().size();
    StarTracks tracks = scene.sky().tracks();
    double[] log = new double[frames];
    double[] trackLog = new double[tracks.count()];
    for (int round = 0; round < ROUNDS; round++) {
      brightness(scene, log, trackLog);
      for (int i = 0; i < frames; i++) {
        log[i] = over(scene, i, trackLog);
      }
    }
    double middle = RobustStats.median(log);
    return Arrays.stream(log).map(l -> Math.exp(l - middle)).toArray();
  }

  /**
   * By how much an exposure is longer if light tells; 1 where it is the sky's or the air's doing.
   */
  static double longer(double light) {
    return light < SAME_LIGHT && light > 1 / SAME_LIGHT ? 1 : light;
  }

  /** The stars' light over the sky's, each relative to the scene's median; 1 where it is black. */
  static double[] overSky(SceneEvidence scene) {
    double[] ratios = of(scene);
    double[] levels =
        scene.frames().stream().mapToDouble(f -> f.field().sky().levelCounts()).toArray();
    double usual = RobustStats.median(levels);
    for (int i = 0; i < ratios.length; i++) {
      ratios[i] = levels[i] > 0 && usual > 0 ? ratios[i] * usual / levels[i] : 1;
    }
    return ratios;
  }

  /** Each track's mean log flux, the frames' light taken off. */
  private static void brightness(SceneEvidence scene, double[] log, double[] trackLog) {
    int[] seen = new int[trackLog.length];
    Arrays.fill(trackLog, 0);
    for (int i = 0; i < log.length; i++) {
      List<Star> stars = scene.frames().get(i).field().stars();
      for (int j = 0; j < stars.size(); j++) {
        int track = scene.sky().tracks().trackOf(scene.places().get(i), j);
        if (track >= 0 && stars.get(j).fluxCounts() > 0) {
          trackLog[track] += Math.log(stars.get(j).fluxCounts()) - log[i];
          seen[track]++;
        }
      }
    }
    for (int t = 0; t < trackLog.length; t++) {
      trackLog[t] = seen[t] > 1 ? trackLog[t] / seen[t] : Double.NaN;
    }
  }

  private static double over(SceneEvidence scene, int index, double[] trackLog) {
    List<Star> stars = scene.frames().get(index).field().stars();
    List<Double> over = new ArrayList<>();
    for (int j = 0; j < stars.size(); j++) {
      int track = scene.sky().tracks().trackOf(scene.places().get(index), j);
      if (track >= 0 && stars.get(j).fluxCounts() > 0 && !Double.isNaN(trackLog[track])) {
        over.add(Math.log(stars.get(j).fluxCounts()) - trackLog[track]);
      }
    }
    return over.isEmpty()
        ? 0
        : RobustStats.median(over.stream().mapToDouble(value -> value).toArray());
  }
}
