package rondure.sky;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rondure.base.RobustStats;

/** First attitudes of frames and directions of stars: frame by frame, outwards from one. */
final class BundleStart {
  private static final int LEAST_PAIRS = 4;

  private final SightingTable table;
  private final Camera camera;
  private final Direction[] seen;
  private final List<List<Integer>> byFrame = new ArrayList<>();
  private final int[] trackOf;

  /** Turn the reference frame's axes into each frame's; null where a frame hangs on no other. */
  final Rotation[] attitudes;

  /** In the reference frame's axes; null where no frame with an attitude shows the star. */
  final Direction[] stars;

  BundleStart(SightingTable table, Camera camera) {
    this.table = table;
    this.camera = camera;
    seen = new Direction[table.count()];
    trackOf = new int[table.count()];
    attitudes = new Rotation[table.frames()];
    stars = new Direction[table.tracks()];
    sort();
    int reference = table.reference();
    attitudes[reference] = Rotation.NONE;
    placeNew(reference);
    for (int distance = 1; distance < table.frames(); distance++) {
      link(reference - distance);
      link(reference + distance);
    }
    placeAll();
  }

  private void sort() {
    for (int f = 0; f < table.frames(); f++) {
      byFrame.add(new ArrayList<>());
    }
    for (int track = 0; track < table.tracks(); track++) {
      for (int i = table.firstOfTrack[track]; i < table.firstOfTrack[track + 1]; i++) {
        if (camera.sees(table.xs[i], table.ys[i])) {
          seen[i] = camera.direction(table.xs[i], table.ys[i]);
          trackOf[i] = track;
          byFrame.get(table.frame[i]).add(i);
        }
      }
    }
  }

  private void link(int frame) {
    if (frame < 0 || frame >= attitudes.length) {
      return;
    }
    List<DirectionPair> pairs = new ArrayList<>();
    for (int i : byFrame.get(frame)) {
      if (stars[trackOf[i]] != null) {
        double error = table.errors[i] / camera.focalLengthPx();
        pairs.add(new DirectionPair(stars[trackOf[i]], seen[i], error));
      }
    }
    Optional<RotationFit> fit =
        pairs.size() < LEAST_PAIRS ? Optional.empty() : Kabsch.robust(pairs);
    if (fit.isPresent()) {
      attitudes[frame] = fit.get().rotation();
      placeNew(frame);
    }
  }

  /** Stars seen here first. */
  private void placeNew(int frame) {
    Rotation back = attitudes[frame].inverse();
    for (int i : byFrame.get(frame)) {
      if (stars[trackOf[i]] == null) {
        stars[trackOf[i]] = back.apply(seen[i]);
      }
    }
  }

  /** Median of where the linked frames see a star, so that one wrong sighting does not count. */
  private void placeAll() {
    for (int track = 0; track < stars.length; track++) {
      List<Direction> places = new ArrayList<>();
      for (int i = table.firstOfTrack[track]; i < table.firstOfTrack[track + 1]; i++) {
        Rotation attitude = attitudes[table.frame[i]];
        if (attitude != null && seen[i] != null) {
          places.add(attitude.inverse().apply(seen[i]));
        }
      }
      if (!places.isEmpty()) {
        stars[track] =
            Direction.of(
                RobustStats.median(places.stream().mapToDouble(Direction::x).toArray()),
                RobustStats.median(places.stream().mapToDouble(Direction::y).toArray()),
                RobustStats.median(places.stream().mapToDouble(Direction::z).toArray()));
      }
    }
  }
}
