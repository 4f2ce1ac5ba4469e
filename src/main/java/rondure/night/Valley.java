package rondure.night;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A stretch of frames whose stars get narrower step by step and then wider again.
 *
 * @param first index of its first point
 * @param last of its last
 * @param stepsBefore steps that are seen on the way down
 * @param stepsAfter steps that are seen on the way up
 */
record Valley(int first, int last, int stepsBefore, int stepsAfter) {
  /** A frame this much sharper than the first of its level is rather on its way back. */
  private static final double BACK_SIGMAS = 1.5;

  int size() {
    return last - first + 1;
  }

  /** Those of both sides; none where one side has none. */
  int steps() {
    return stepsBefore > 0 && stepsAfter > 0 ? stepsBefore + stepsAfter : 0;
  }

  /** Without the frames that it shares with another, each of them taken for a step. */
  Valley without(Valley other) {
    if (!overlaps(other)) {
      return this;
    }
    return first >= other.first
        ? new Valley(other.last + 1, last, stepsBefore - (other.last + 1 - first), stepsAfter)
        : new Valley(first, other.first - 1, stepsBefore, stepsAfter - (last + 1 - other.first));
  }

  private boolean overlaps(Valley other) {
    return first <= other.last && other.first <= last;
  }

  /** One side of a valley, walked upwards from its lowest point. */
  private static final class Flank {
    private final List<SeriesPoint> points;
    private final SeriesSettings settings;
    private final int direction;
    private final List<Integer> level = new ArrayList<>();
    private int usualRepeats;
    private int steps;

    Flank(List<SeriesPoint> points, SeriesSettings settings, int lowest, int direction) {
      this.points = points;
      this.settings = settings;
      this.direction = direction;
      walk(lowest);
    }

    private void walk(int lowest) {
      level.add(lowest);
      for (int i = lowest + direction; isNear(lowest, i); i += direction) {
        SeriesPoint point = points.get(i);
        SeriesPoint before = points.get(level.get(level.size() - 1));
        boolean up =
            level.stream().allMatch(k -> point.isWider(points.get(k), settings.stepSigmas()));
        boolean down = before.isWider(point, settings.stepSigmas());
        boolean stays = !up && level.size() >= most();
        if (down || stays) {
          break;
        }
        if (up) {
          usualRepeats = steps == 0 ? usualRepeats : Math.max(usualRepeats, level.size());
          steps++;
          level.clear();
        }
        level.add(i);
      }
    }

    /** About the best focus steps are not seen. */
    private int most() {
      return steps == 0 ? 2 * settings.mostRepeats() : settings.mostRepeats();
    }

    private boolean isNear(int lowest, int i) {
      if (i < 0 || i >= points.size() || Math.abs(i - lowest) >= settings.mostFrames()) {
        return false;
      }
      SeriesPoint start = points.get(lowest);
      SeriesPoint point = points.get(i);
      boolean inTime =
          point
              .seconds()
              .flatMap(to -> start.seconds().map(from -> Math.abs(to - from)))
              .map(seconds -> seconds <= 60 * settings.mostMinutes())
              .orElse(true);
      return inTime && point.fNumber().equals(start.fNumber());
    }

    /**
     * The last point: of a long stay at its top no more than the ring was left elsewhere, and
     * nothing that seems to go back.
     */
    int end() {
      boolean stayed = steps > 0 && level.size() >= settings.mostRepeats();
      int kept = stayed ? Math.min(Math.max(1, usualRepeats), level.size()) : level.size();
      SeriesPoint start = points.get(level.get(0));
      while (kept > 1 && start.isWider(points.get(level.get(kept - 1)), BACK_SIGMAS)) {
        kept--;
      }
      return level.get(kept - 1);
    }
  }

  /** The valley about a point that none beside it is lower than; empty without two flanks. */
  static Optional<Valley> about(int lowest, List<SeriesPoint> points, SeriesSettings settings) {
    Flank before = new Flank(points, settings, lowest, -1);
    Flank after = new Flank(points, settings, lowest, 1);
    return before.steps == 0 || after.steps == 0
        ? Optional.empty()
        : Optional.of(new Valley(before.end(), after.end(), before.steps, after.steps));
  }

  /** All of them, those with the most steps first. */
  static List<Valley> all(List<SeriesPoint> points, SeriesSettings settings) {
    List<Valley> valleys = new ArrayList<>();
    for (int i = 1; i + 1 < points.size(); i++) {
      double own = points.get(i).acrossPx2();
      if (own <= points.get(i - 1).acrossPx2() && own <= points.get(i + 1).acrossPx2()) {
        about(i, points, settings).ifPresent(valleys::add);
      }
    }
    valleys.sort(Comparator.comparingInt(Valley::steps).reversed().thenComparing(Valley::first));
    return valleys;
  }
}
