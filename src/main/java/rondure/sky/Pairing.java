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
      x[i] = at.isPresent() ? at.get().xPx() : Double.NaN;
      y[i] = at.isPresent() ? at.get().yPx() : Double.NaN;
    }

    /** The places with a displacement. */
    Foretold moved(SmoothShift shift) {
      Foretold moved = new Foretold(x.length);
      for (int i = 0; i < x.length; i++) {
        ImagePoint at = shift.moved(new ImagePoint(x[i], y[i]));
        moved.x[i] = at.xPx();
        moved.y[i] = at.yPx();
      }
      return moved;
    }

    /** From where one was foretold to where a star stands. */
    double distancePx(int i, FrameStars to, int star) {
      double dx = to.x[star] - x[i];
      double dy = to.y[star] - y[i];
      return Math.sqrt(dx * dx + dy * dy);
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
      double away = places.distancePx(i, to, found);
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
