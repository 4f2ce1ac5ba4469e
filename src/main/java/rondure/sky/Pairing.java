package rondure.sky;

import java.util.Arrays;
import java.util.Optional;

/** Which star of one frame is which of another, one to one. */
final class Pairing {
  /** For each star of the first frame, its partner in the second, or -1. */
  final int[] partner;

  /** Stars of the first frame that fall into the second frame. */
  final int inside;

  final int count;

  private Pairing(int[] partner, int inside) {
    this.partner = partner;
    this.inside = inside;
    this.count = (int) Arrays.stream(partner).filter(p -> p >= 0).count();
  }

  /** Places of the stars of one frame as foretold on another; NaN behind the camera. */
  static final class Foretold {
    final double[] x;
    final double[] y;

    Foretold(int count) {
      x = new double[count];
      y = new double[count];
    }

    void set(int i, Optional<ImagePoint> at) {
      x[i] = at.map(ImagePoint::xPx).orElse(Double.NaN);
      y[i] = at.map(ImagePoint::yPx).orElse(Double.NaN);
    }
  }

  /** Nearest partners within a radius; of two that claim one, the nearer has it. */
  static Pairing nearest(Foretold places, FrameStars to, double radiusPx) {
    int count = places.x.length;
    int[] partner = new int[count];
    int[] owner = new int[to.count];
    double[] distance = new double[to.count];
    Arrays.fill(partner, -1);
    Arrays.fill(owner, -1);
    int inside = 0;
    for (int i = 0; i < count; i++) {
      if (!to.holds(places.x[i], places.y[i])) {
        continue;
      }
      inside++;
      int found = to.grid.nearest(places.x[i], places.y[i], radiusPx);
      if (found < 0) {
        continue;
      }
      double away = Math.hypot(to.x[found] - places.x[i], to.y[found] - places.y[i]);
      if (owner[found] < 0 || away < distance[found]) {
        if (owner[found] >= 0) {
          partner[owner[found]] = -1;
        }
        owner[found] = i;
        distance[found] = away;
        partner[i] = found;
      }
    }
    return new Pairing(partner, inside);
  }

  /** Pairs that are known: a partner for each. */
  static Pairing given(int[] partner) {
    return new Pairing(partner.clone(), partner.length);
  }
}
