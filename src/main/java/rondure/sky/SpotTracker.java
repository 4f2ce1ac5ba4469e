package rondure.sky;

import java.util.ArrayList;
import java.util.List;

/**
 * Follows detections that come back at the same place on the sensor from frame to frame.
 *
 * <p>Only the runs that are still alive are held, so memory does not grow with the number of
 * frames; what was seen once and never again is counted and forgotten.
 */
final class SpotTracker {
  /** A run ends when its place stays empty for more frames than this. */
  private static final int LONGEST_GAP = 3;

  /**
   * A detection that came back at one place.
   *
   * @param xPx mean position
   * @param yPx mean position
   * @param first frame index
   * @param last frame index
   * @param seen frames it was seen in, all between first and last
   * @param widthPx mean half-maximum width where measured (0 for single photosites), NaN if never
   */
  record Run(double xPx, double yPx, int first, int last, int seen, double widthPx) {
    int lag() {
      return last - first;
    }

    /** Seen in at least half of the frames it spans. */
    boolean isSteady() {
      return 2 * seen >= lag() + 1;
    }
  }

  private static final class Open {
    double xSum;
    double ySum;
    double widthSum;
    int widthCount;
    int seen;
    int first;
    int last;
    boolean starlike;

    Run close() {
      double width = widthCount == 0 ? Double.NaN : widthSum / widthCount;
      return new Run(xSum / seen, ySum / seen, first, last, seen, width);
    }
  }

  private final double radiusPx;
  private final int leastLag;
  private List<Open> open = new ArrayList<>();
  private final List<Run> lasting = new ArrayList<>();
  private long loneStarlike;
  private long starlike;

  /**
   * @param radiusPx how far a detection may be from the mean place of its run
   * @param leastLag frames from first to last that a run must span to be reported
   */
  SpotTracker(double radiusPx, int leastLag) {
    this.radiusPx = radiusPx;
    this.leastLag = leastLag;
  }

  /** Adds the next frame; frames must come in order of their index. */
  void add(int frame, Spots spots) {
    double[] xs = open.stream().mapToDouble(run -> run.xSum / run.seen).toArray();
    double[] ys = open.stream().mapToDouble(run -> run.ySum / run.seen).toArray();
    PointGrid grid = new PointGrid(xs, ys, xs.length);
    List<Open> started = new ArrayList<>();
    for (int i = 0; i < spots.count(); i++) {
      starlike += spots.starlike[i] ? 1 : 0;
      int found = grid.nearest(spots.xs[i], spots.ys[i], radiusPx);
      Open run = found < 0 ? null : open.get(found);
      if (run == null || run.last == frame) {
        run = new Open();
        run.first = frame;
        started.add(run);
      }
      extend(run, frame, spots, i);
    }
    closeOld(frame);
    open.addAll(started);
  }

  private static void extend(Open run, int frame, Spots spots, int i) {
    run.xSum += spots.xs[i];
    run.ySum += spots.ys[i];
    run.seen++;
    run.starlike |= spots.starlike[i];
    run.last = frame;
    if (!Double.isNaN(spots.widths[i])) {
      run.widthSum += spots.widths[i];
      run.widthCount++;
    }
  }

  private void closeOld(int frame) {
    List<Open> alive = new ArrayList<>();
    for (Open run : open) {
      if (frame - run.last > LONGEST_GAP) {
        finish(run);
      } else {
        alive.add(run);
      }
    }
    open = alive;
  }

  private void finish(Open run) {
    if (run.seen == 1) {
      loneStarlike += run.starlike ? 1 : 0;
      return;
    }
    Run closed = run.close();
    if (closed.lag() >= leastLag && closed.isSteady()) {
      lasting.add(closed);
    }
  }

  /** The steady runs that span the least lag; ends the tracking. */
  List<Run> finishAll() {
    open.forEach(this::finish);
    open = new ArrayList<>();
    return List.copyOf(lasting);
  }

  /** Share of the starlike detections that never came back to their place. */
  double loneShare() {
    return starlike == 0 ? 0 : Math.min(1, loneStarlike / (double) starlike);
  }

  /** How many starlike detections never came back. */
  long loneCount() {
    return loneStarlike;
  }
}
