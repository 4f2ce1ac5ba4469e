package rondure.sky;

import java.util.List;
import rondure.base.RobustStats;
import rondure.stars.Star;
import rondure.stars.StarField;

/** Whether detections that stay on the sensor prove to be stars all the same. */
final class StarProof {
  private static final int STARS_BEYOND_DOUBT = 100;
  private static final double STAR_WIDTH_BEYOND_DOUBT_PX = 1.6;
  private static final int SPREAD_STARS_BEYOND_DOUBT = 30;

  /** Demosaicing and compression spread one hot photosite to about 1.75 px. */
  private static final double SPREAD_STAR_WIDTH_BEYOND_DOUBT_PX = 1.9;

  private static final int SPREAD_COLUMNS = 4;
  private static final int SPREAD_ROWS = 3;

  private final List<SceneFrame> frames;

  StarProof(List<SceneFrame> frames) {
    this.frames = List.copyOf(frames);
  }

  /** Detections of a frame that could be stars. */
  Spots starlike(int frame) {
    return Spots.of(frames.get(frame).field()).starlikeOnly();
  }

  /** Whether detections that nearly stay share a motion of a fraction of a pixel. */
  boolean moveTogether() {
    int step = Math.max(1, frames.size() / 20);
    for (int i = 0; i < frames.size() - 1; i += step) {
      Spots here = starlike(i);
      for (int other :
          new int[] {i + 1, Math.min(i + step, frames.size() - 1), frames.size() - 1}) {
        Spots there = starlike(other);
        if (other > i
            && CommonShift.between(here, there, StaticDetections.STAY_RADIUS_PX).isReal()) {
          return true;
        }
      }
    }
    return false;
  }

  /** Hundreds, or dozens all over the frame, wider than developing leaves any single photosite. */
  boolean areBeyondDoubt() {
    double[] counts = frames.stream().mapToDouble(f -> f.field().stars().size()).toArray();
    double count = RobustStats.median(counts);
    double width = widthPx();
    boolean many = count >= STARS_BEYOND_DOUBT && width > STAR_WIDTH_BEYOND_DOUBT_PX;
    return many
        || count >= SPREAD_STARS_BEYOND_DOUBT
            && width > SPREAD_STAR_WIDTH_BEYOND_DOUBT_PX
            && frames.stream().allMatch(StarProof::coversTheFrame);
  }

  /** Lamps stand along the horizon; stars stand in at least half of twelve parts of the frame. */
  private static boolean coversTheFrame(SceneFrame frame) {
    StarField field = frame.field();
    long cells =
        field.stars().stream()
            .map(
                star ->
                    (int) (SPREAD_COLUMNS * star.xPx() / field.widthPx())
                        + SPREAD_COLUMNS * (int) (SPREAD_ROWS * star.yPx() / field.heightPx()))
            .distinct()
            .count();
    return 2 * cells >= SPREAD_COLUMNS * SPREAD_ROWS;
  }

  /** Median half-maximum width over the frames, px; NaN without stars. */
  double widthPx() {
    double[] medians =
        frames.stream()
            .map(frame -> frame.field().stars())
            .filter(stars -> !stars.isEmpty())
            .mapToDouble(s -> RobustStats.median(s.stream().mapToDouble(Star::fwhmPx).toArray()))
            .toArray();
    return RobustStats.median(medians);
  }
}
