package rondure.sky;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;

/**
 * How soon the starlike detections of a scene leave their places, seen in the frames themselves.
 *
 * @param stayNear share of detections still in place one frame later, NaN when it cannot be told
 * @param stayFar least share in place at any larger distance of frames
 * @param lagFrames distance of frames after which half of those that leave later have left: about 1
 *     px of motion
 * @param detections typical number per frame
 */
record SkyPace(double stayNear, double stayFar, int lagFrames, double detections) {
  private static final int PAIRS_PER_LAG = 24;
  private static final int LEAST_DETECTIONS = 3;
  private static final int LEAST_LEAVING = 5;

  static final SkyPace UNKNOWN = new SkyPace(Double.NaN, Double.NaN, 0, 0);

  /** Stars leave their places while the frames last. */
  boolean isMoving() {
    return movesSlowly() || movesAtOnce();
  }

  /** Detections that are in place one frame later leave after a few frames more. */
  boolean movesSlowly() {
    return stayFar < 0.8 * stayNear && (stayNear - stayFar) * detections >= LEAST_LEAVING;
  }

  /** Most detections are gone in the very next frame, and those that stay, stay. */
  boolean movesAtOnce() {
    return !movesSlowly() && stayNear < 0.5 && (1 - stayFar) * detections >= LEAST_LEAVING;
  }

  /** Nearly all detections that can be compared are where they were, however long one waits. */
  boolean isStaying() {
    return stayNear >= 0.5 && !isMoving();
  }

  private record Lag(int frames, double stayShare, double detections) {}

  /**
   * @param count number of frames
   * @param frames starlike detections of a frame by its place in time order, made when asked for
   * @param radiusPx how near counts as in place
   */
  static SkyPace of(int count, IntFunction<Spots> frames, double radiusPx) {
    List<Lag> lags = new ArrayList<>();
    for (int lag = 1; lag < count; lag = Math.max(lag + 1, lag * 4 / 3)) {
      Lag seen = at(count, frames, lag, radiusPx);
      if (seen.detections() > 0) {
        lags.add(seen);
      }
    }
    if (lags.isEmpty() || lags.get(0).frames() != 1) {
      return UNKNOWN;
    }
    double near = lags.get(0).stayShare();
    double far = lags.stream().mapToDouble(Lag::stayShare).min().orElse(near);
    double middle = (near + far) / 2;
    int half =
        lags.stream().filter(l -> l.stayShare() <= middle).findFirst().orElseThrow().frames();
    return new SkyPace(near, far, half, lags.get(0).detections());
  }

  private static Lag at(int count, IntFunction<Spots> frames, int lag, double radiusPx) {
    int pairs = count - lag;
    int step = Math.max(1, pairs / PAIRS_PER_LAG);
    long stayed = 0;
    long compared = 0;
    int used = 0;
    for (int first = 0; first < pairs; first += step) {
      Spots before = frames.apply(first);
      Spots after = frames.apply(first + lag);
      int fewer = Math.min(before.count(), after.count());
      if (fewer >= LEAST_DETECTIONS) {
        stayed += Math.min(fewer, stayed(before, after, radiusPx));
        compared += fewer;
        used++;
      }
    }
    return new Lag(
        lag,
        compared == 0 ? 0 : stayed / (double) compared,
        used == 0 ? 0 : compared / (double) used);
  }

  private static int stayed(Spots before, Spots after, double radiusPx) {
    int count = 0;
    for (int i = 0; i < before.count(); i++) {
      count += after.grid().nearest(before.xs[i], before.ys[i], radiusPx) >= 0 ? 1 : 0;
    }
    return count;
  }
}
