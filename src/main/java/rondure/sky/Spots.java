package rondure.sky;

import java.util.Arrays;
import rondure.stars.Detection;
import rondure.stars.Refusal;
import rondure.stars.Star;
import rondure.stars.StarField;

/** Positions of one frame's detections in plain arrays: stars first, then the others. */
final class Spots {
  final double[] xs;
  final double[] ys;

  /** Half-maximum width of a measured star; 0 for a single photosite, NaN where unknown. */
  final double[] widths;

  /** Whether the detection could be a star of the sky region, as far as one frame can tell. */
  final boolean[] starlike;

  private PointGrid grid;

  private Spots(int count) {
    xs = new double[count];
    ys = new double[count];
    widths = new double[count];
    starlike = new boolean[count];
  }

  static Spots of(StarField field) {
    Spots spots = new Spots(field.stars().size() + field.others().size());
    int i = 0;
    for (Star star : field.stars()) {
      spots.set(i++, star.xPx(), star.yPx(), star.fwhmPx(), true);
    }
    for (Detection other : field.others()) {
      boolean hot = other.reason() == Refusal.HOT_PIXEL;
      boolean sky = !hot && other.reason() != Refusal.NOT_SKY && other.reason() != Refusal.STREAK;
      spots.set(i++, other.xPx(), other.yPx(), hot ? 0 : Double.NaN, sky);
    }
    return spots;
  }

  private void set(int i, double x, double y, double width, boolean canBeStar) {
    xs[i] = x;
    ys[i] = y;
    widths[i] = width;
    starlike[i] = canBeStar;
  }

  int count() {
    return xs.length;
  }

  PointGrid grid() {
    if (grid == null) {
      grid = new PointGrid(xs, ys, xs.length);
    }
    return grid;
  }

  /** Only the detections that could be stars. */
  Spots starlikeOnly() {
    int kept = 0;
    Spots copy = new Spots(count());
    for (int i = 0; i < count(); i++) {
      if (starlike[i]) {
        copy.set(kept++, xs[i], ys[i], widths[i], true);
      }
    }
    Spots cut = new Spots(kept);
    System.arraycopy(copy.xs, 0, cut.xs, 0, kept);
    System.arraycopy(copy.ys, 0, cut.ys, 0, kept);
    System.arraycopy(copy.widths, 0, cut.widths, 0, kept);
    Arrays.fill(cut.starlike, true);
    return cut;
  }
}
