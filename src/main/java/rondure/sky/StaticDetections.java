package rondure.sky;

import java.util.List;
import java.util.Optional;
import rondure.sky.StaticReport.Finding;

/**
 * Finds what stays on the sensor while the sky moves over it: hot pixels and lights on the ground.
 *
 * <p>A detection is static when it stays within {@link #STAY_RADIUS_PX} over at least three frames
 * in which the sky moved by more than {@link #LEAST_MOTION_PX}: by prediction, where the facts
 * tell, and as seen from how soon the other detections leave their places. The longer the scene,
 * the longer a spot must stay, so that slow stars near the pole are not taken for lamps. When
 * nearly everything stays, a shared motion of a fraction of a pixel, or hundreds of starlike
 * widths, prove stars (a tracking mount, the pole, a short span); without such proof nothing in the
 * frames follows the sky.
 */
public final class StaticDetections {

  /** A detection within this distance of its earlier place has stayed. */
  public static final double STAY_RADIUS_PX = 1;

  /** The sky must have moved by more than this before staying means anything. */
  public static final double LEAST_MOTION_PX = 3;

  /** Predicted motion from which a scene in which everything stays is suspect. */
  static final double TELLING_MOTION_PX = 10;

  private static final double LONGEST_DEMAND_PX = 40;
  private static final int SEEN_MOTION_LAGS = 4;
  private static final int LONGEST_DEMAND_LAGS = 20;
  private static final int LONGEST_DEMAND_FAST_FRAMES = 10;

  private static final double LONE_SHARE_OF_MOVING_SKY = 0.15;
  private static final int LONE_PER_FRAME_OF_MOVING_SKY = 5;

  private final List<SceneFrame> frames;
  private final StarProof stars;

  private StaticDetections(List<SceneFrame> frames) {
    this.frames = frames;
    this.stars = new StarProof(frames);
  }

  /**
   * Examines one scene.
   *
   * @param frames of one camera, lens, focal length and size, in time order
   */
  public static StaticReport examine(List<SceneFrame> frames) {
    return new StaticDetections(List.copyOf(frames)).examine();
  }

  private StaticReport examine() {
    if (frames.size() < 2) {
      return untouched(Finding.CANNOT_TELL);
    }
    SkyPace pace = pace();
    Optional<Double> span = frames.get(0).predictedMotionPx(frames.get(frames.size() - 1));
    int leastLag = Math.max(Math.min(2, frames.size() - 1), demandedLag(pace));
    SpotTracker tracker = new SpotTracker(STAY_RADIUS_PX, leastLag);
    for (int i = 0; i < frames.size(); i++) {
      tracker.add(i, Spots.of(frames.get(i).field()));
    }
    List<SpotTracker.Run> runs = tracker.finishAll();
    if (pace.isMoving() || othersNeverReturn(tracker)) {
      List<SpotTracker.Run> proven =
          runs.stream().filter(run -> outlastsTheSky(run, span)).toList();
      return remove(Finding.SKY_MOVES, proven);
    }
    return whenAllStays(pace, span, runs);
  }

  private SkyPace pace() {
    return SkyPace.of(frames.size(), stars::starlike, STAY_RADIUS_PX);
  }

  /** Frames that a spot must span: 4 px of motion as seen, more when the scene is long. */
  private int demandedLag(SkyPace pace) {
    if (!pace.isMoving()) {
      return 2;
    }
    int half = (frames.size() - 1) / 2;
    if (pace.movesAtOnce()) {
      return clamp(half, 2, LONGEST_DEMAND_FAST_FRAMES);
    }
    return clamp(half, SEEN_MOTION_LAGS * pace.lagFrames(), LONGEST_DEMAND_LAGS * pace.lagFrames());
  }

  private boolean othersNeverReturn(SpotTracker tracker) {
    return frames.size() >= 3
        && tracker.loneShare() >= LONE_SHARE_OF_MOVING_SKY
        && tracker.loneCount() >= (long) LONE_PER_FRAME_OF_MOVING_SKY * frames.size();
  }

  /** The facts, where there are any, must agree that the sky moved away under the spot. */
  private boolean outlastsTheSky(SpotTracker.Run run, Optional<Double> span) {
    Optional<Double> motion = frames.get(run.first()).predictedMotionPx(frames.get(run.last()));
    if (run.seen() < 3) {
      return false;
    }
    if (motion.isEmpty() || span.isEmpty()) {
      return true;
    }
    double demand = Math.min(LONGEST_DEMAND_PX, Math.max(LEAST_MOTION_PX, span.get() / 2));
    return motion.get() > demand;
  }

  private StaticReport whenAllStays(
      SkyPace pace, Optional<Double> span, List<SpotTracker.Run> runs) {
    boolean longEnough = span.map(px -> px > TELLING_MOTION_PX).orElse(frames.size() >= 3);
    if (!pace.isStaying() || !longEnough || runs.isEmpty()) {
      return fewDetections(span, runs);
    }
    if (stars.moveTogether() || stars.areBeyondDoubt()) {
      return untouched(Finding.SKY_STAYS);
    }
    return remove(Finding.NOTHING_FOLLOWS_THE_SKY, runs);
  }

  /** Too few to watch the sky by: what the facts prove to be static goes, the rest stays. */
  private StaticReport fewDetections(Optional<Double> span, List<SpotTracker.Run> runs) {
    if (span.isEmpty()
        || span.get() <= TELLING_MOTION_PX
        || stars.areBeyondDoubt()
        || stars.moveTogether()) {
      return untouched(Finding.CANNOT_TELL);
    }
    List<SpotTracker.Run> proven = runs.stream().filter(run -> outlastsTheSky(run, span)).toList();
    return remove(Finding.CANNOT_TELL, proven);
  }

  private StaticReport untouched(Finding finding) {
    List<Integer> none = frames.stream().map(frame -> 0).toList();
    return new StaticReport(
        finding, frames.stream().map(SceneFrame::field).toList(), none, List.of());
  }

  private StaticReport remove(Finding finding, List<SpotTracker.Run> runs) {
    return new StaticRemoval(frames, finding, stars.widthPx()).of(runs);
  }

  private static int clamp(int value, int least, int most) {
    return Math.max(least, Math.min(most, value));
  }
}
