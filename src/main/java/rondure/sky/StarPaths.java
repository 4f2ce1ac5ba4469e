package rondure.sky;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Places of the same stars in two frames, as far apart in time as their tracks reach. */
final class StarPaths {
  private static final int LEAST_STARS = 8;
  private static final int FARTHEST_FRAMES = 12;

  private StarPaths() {}

  /** Two frames and the places of their common stars. */
  record Pair(FrameStars from, FrameStars to, int parent, int frame, List<int[]> stars) {
    Pair {
      stars = List.copyOf(stars);
    }

    int count() {
      return stars.size();
    }

    Optional<Double> seconds(SceneClock clock) {
      return clock.secondsOf(parent).flatMap(a -> clock.secondsOf(frame).map(b -> b - a));
    }

    /** The rotation between the two frames through a camera. */
    Optional<TurnFit> fit(Camera camera) {
      TurnFit.Pairs pairs = new TurnFit.Pairs(stars.size());
      for (int[] star : stars) {
        double x = from.x[star[0]];
        double y = from.y[star[0]];
        if (camera.sees(x, y)) {
          double error = Math.hypot(from.errorPx[star[0]], to.errorPx[star[1]]);
          pairs.add(camera.direction(x, y), to.x[star[1]], to.y[star[1]], error);
        }
      }
      return TurnFit.of(camera, pairs, Rotation.NONE);
    }
  }

  /** Pairs of frames with long ways between them, at most so many, spread over the links. */
  static List<Pair> longest(List<FrameStars> frames, List<FrameLink> links, int most) {
    List<FrameLink> plain = links.stream().filter(l -> !l.isFirst()).toList();
    List<Pair> pairs = new ArrayList<>();
    int step = Math.max(1, plain.size() / most);
    for (int end = plain.size() - 1; end >= 0; end -= step) {
      pairs.add(chained(frames, plain, end));
    }
    return pairs.stream()
        .filter(p -> p.count() >= LEAST_STARS)
        .sorted(Comparator.comparingInt(Pair::count).reversed())
        .limit(most)
        .toList();
  }

  /** Follows the stars of a link back over its parents while half of them last. */
  private static Pair chained(List<FrameStars> frames, List<FrameLink> links, int end) {
    FrameLink link = links.get(end);
    int first = link.parent();
    List<int[]> stars = link.pairs();
    for (int back = end - 1; back >= 0 && end - back < FARTHEST_FRAMES; back--) {
      FrameLink before = links.get(back);
      if (before.frame() != first) {
        continue;
      }
      List<int[]> longer = joined(before.pairs(), stars, frames.get(first).count);
      if (longer.size() < Math.max(LEAST_STARS, link.pairs().size() / 2)) {
        break;
      }
      stars = longer;
      first = before.parent();
    }
    return new Pair(frames.get(first), frames.get(link.frame()), first, link.frame(), stars);
  }

  private static List<int[]> joined(List<int[]> before, List<int[]> after, int middleCount) {
    int[] origin = new int[middleCount];
    java.util.Arrays.fill(origin, -1);
    before.forEach(pair -> origin[pair[1]] = pair[0]);
    return after.stream()
        .filter(pair -> origin[pair[0]] >= 0)
        .map(pair -> new int[] {origin[pair[0]], pair[1]})
        .toList();
  }
}
