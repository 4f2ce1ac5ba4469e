package rondure.sky;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * A knock in an exposure draws every star twice, so that two frames match in two ways. One of them
 * goes by the images that stand for the frames' aim: where a star of the first frame has two
 * partners, the brighter; where a star of the second has two, the one that was followed before, or
 * else the brighter.
 */
final class BrighterImage {
  private static final int BRIGHTEST = 200;
  private static final int REACH_PX = 64;
  private static final int CELL_PX = 2;
  private static final int LEAST_PAIRS = 6;
  private static final double LEAST_SHARE = 0.3;

  /** Offsets between images nearer than this are misfits. */
  private static final double NEAREST_PX = 2.5;

  private static final double RADIUS_PX = 3;
  private static final int LEAST_CONTESTED = 4;

  private final FramePair pair;
  private final FrameMatch match;
  private final Pairing.Foretold places;
  private final int cells = 2 * REACH_PX / CELL_PX + 1;

  private BrighterImage(FramePair pair, FrameMatch match) {
    this.pair = pair;
    this.match = match;
    this.places = pair.foretell(match.turn());
  }

  /**
   * The match by the images that stand for the frames' aim: the given one unless another is proven.
   *
   * @param followed which stars of the first frame were matched with an earlier one; all false when
   *     none was
   */
  static FrameMatch of(FramePair pair, FrameMatch match, boolean[] followed) {
    return new BrighterImage(pair, match)
        .other()
        .filter(other -> isBetter(other.pairing(), match.pairing(), followed, pair.to().count))
        .orElse(match);
  }

  /** The match shifted by the commonest offset between other stars, when there is one. */
  private Optional<FrameMatch> other() {
    int[] votes = votes();
    int best =
        IntStream.range(0, votes.length).reduce((a, b) -> votes[b] > votes[a] ? b : a).orElse(0);
    if (votes[best]
        < Math.max(LEAST_PAIRS, LEAST_SHARE * Math.min(BRIGHTEST, match.pairing().count))) {
      return Optional.empty();
    }
    double focal = pair.camera().focalLengthPx();
    double x = (best / cells) * CELL_PX - REACH_PX;
    double y = (best % cells) * CELL_PX - REACH_PX;
    Rotation shifted = match.turn().then(Rotation.ofVector(-y / focal, x / focal, 0));
    return FrameMatch.refined(pair, shifted, RADIUS_PX, Math.log(votes.length))
        .filter(FrameMatch::isCertain);
  }

  /** How often each offset occurs, neighbouring cells added. */
  private int[] votes() {
    int[] counts = new int[cells * cells];
    FrameStars to = pair.to();
    for (int i = 0; i < Math.min(BRIGHTEST, pair.from().count); i++) {
      for (int j = 0; j < Math.min(BRIGHTEST, to.count); j++) {
        double dx = to.x[j] - places.x[i];
        double dy = to.y[j] - places.y[i];
        if (Math.abs(dx) < REACH_PX && Math.abs(dy) < REACH_PX && Math.hypot(dx, dy) > NEAREST_PX) {
          counts[cell(dx) * cells + cell(dy)]++;
        }
      }
    }
    int[] smooth = new int[counts.length];
    for (int x = 1; x + 1 < cells; x++) {
      for (int y = 1; y + 1 < cells; y++) {
        for (int near = 0; near < 9; near++) {
          smooth[x * cells + y] += counts[(x + near / 3 - 1) * cells + y + near % 3 - 1];
        }
      }
    }
    return smooth;
  }

  private static int cell(double offsetPx) {
    return (int) Math.round((offsetPx + REACH_PX) / CELL_PX);
  }

  private static boolean isBetter(Pairing other, Pairing now, boolean[] followed, int toCount) {
    int contested = 0;
    int lead = 0;
    int[] nowFrom = inverse(now, toCount);
    int[] otherFrom = inverse(other, toCount);
    for (int i = 0; i < now.partner.length; i++) {
      if (now.partner[i] >= 0 && other.partner[i] >= 0 && now.partner[i] != other.partner[i]) {
        contested++;
        lead += other.partner[i] < now.partner[i] ? 1 : -1;
      }
    }
    for (int j = 0; j < toCount; j++) {
      int a = nowFrom[j];
      int b = otherFrom[j];
      if (a >= 0 && b >= 0 && a != b) {
        contested++;
        boolean better = followed[a] == followed[b] ? b < a : followed[b];
        lead += better ? 1 : -1;
      }
    }
    return contested >= LEAST_CONTESTED && lead > contested / 2;
  }

  /** For each star of the second frame its partner in the first, or -1. */
  private static int[] inverse(Pairing pairing, int toCount) {
    int[] from = new int[toCount];
    Arrays.fill(from, -1);
    for (int i = 0; i < pairing.partner.length; i++) {
      if (pairing.partner[i] >= 0) {
        from[pairing.partner[i]] = i;
      }
    }
    return from;
  }
}
