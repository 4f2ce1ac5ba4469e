package rondure.night;

import java.util.ArrayList;
import java.util.List;
import rondure.base.RobustStats;
import rondure.sky.SceneSky;
import rondure.sky.StarTracks;
import rondure.stars.Star;
import rondure.stars.StarField;

/** Which frames of a scene show points that turn with the sky: then they are stars. */
final class FollowedStars {
  /** Least share of a frame's measured points that other frames show again. */
  private static final double LEAST_SHARE = 0.7;

  /** What stays within this may be fixed to the sensor. */
  private static final double MOVED_PX = 3;

  private final SceneSky sky;
  private final List<StarField> fields;

  FollowedStars(SceneSky sky, List<StarField> fields) {
    this.sky = sky;
    this.fields = List.copyOf(fields);
  }

  /** True when most of a frame's points are found in other frames, where the sky took them. */
  boolean prove(int frame) {
    boolean turns =
        sky.finding() == SceneSky.Finding.SKY_TURNS
            || sky.finding() == SceneSky.Finding.CLOCK_UNKNOWN;
    if (!turns || !sky.frames().get(frame).isRegistered()) {
      return false;
    }
    List<Star> stars = fields.get(frame).stars();
    List<Double> ways = new ArrayList<>();
    for (int i = 0; i < stars.size(); i++) {
      int track = sky.tracks().trackOf(frame, i);
      double way = track < 0 ? -1 : farthestPx(frame, stars.get(i), track);
      if (way >= 0) {
        ways.add(way);
      }
    }
    return !ways.isEmpty()
        && ways.size() >= LEAST_SHARE * stars.size()
        && RobustStats.median(ways.stream().mapToDouble(w -> w).toArray()) >= MOVED_PX;
  }

  /** How far from here a star is in other frames; -1: none shows it. */
  private double farthestPx(int frame, Star star, int track) {
    StarTracks tracks = sky.tracks();
    double farthest = -1;
    for (int other = 0; other < fields.size(); other++) {
      List<Star> stars = fields.get(other).stars();
      for (int i = 0; i < stars.size() && other != frame; i++) {
        if (tracks.trackOf(other, i) == track) {
          Star seen = stars.get(i);
          double way = Math.hypot(seen.xPx() - star.xPx(), seen.yPx() - star.yPx());
          farthest = Math.max(farthest, way);
        }
      }
    }
    return farthest;
  }
}
