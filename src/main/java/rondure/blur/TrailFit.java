package rondure.blur;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import rondure.sky.Direction;

/**
 * Searches the pole of the sky that explains the directions of a frame's stars, at the known rate.
 *
 * <p>Trails of ± the pole look alike, so half the sphere is searched: a coarse even grid, then the
 * best few refined. Exposure times are nominal: the nearest 2^(n/3) s is tried as well (common
 * practice of camera makers: 30 s is truly 32). Without facts the length is free and a few focal
 * lengths are tried: only how the directions turn over the field can speak then.
 */
final class TrailFit {
  private static final int GRID_POINTS = 500;
  private static final int REFINED = 4;
  private static final double GRID_STEP_RAD = Math.toRadians(6);
  private static final double LAST_STEP_RAD = Math.toRadians(0.3);
  private static final int MOST_MOVES = 40;

  /** Wide, usual and long: 14, 24 and 52 mm on 36 × 24 mm, over the diagonal. */
  private static final double[] FOCAL_LENGTHS_PER_DIAGONAL = {0.33, 0.55, 1.2};

  private static final int GRID_STARS = 50;

  private final SmearField field;
  private final TrailLoss loss;

  private TrailFit(SmearField field, double seconds) {
    this.field = field;
    loss = new TrailLoss(field, seconds);
  }

  /** The best trail model for a field with a known focal length. */
  static SmearModel best(SmearField field, double exposureSeconds) {
    TrailFit nominal = new TrailFit(field, exposureSeconds);
    List<Scored> starts = nominal.grid();
    SmearModel best = nominal.refined(starts);
    double rounded = Math.pow(2, Math.rint(3 * Math.log(exposureSeconds) / Math.log(2)) / 3);
    if (Math.abs(rounded / exposureSeconds - 1) < 0.01) {
      return best;
    }
    SmearModel other = new TrailFit(field, rounded).refined(starts);
    return other.loss() < best.loss() ? other : best;
  }

  /** The best model of a trail of any length, for a field with a known focal length. */
  static SmearModel ofAnyLength(SmearField field) {
    TrailFit fit = new TrailFit(field, TrailLoss.LENGTH_IS_FREE);
    return fit.refined(fit.grid());
  }

  /** The best model of a trail of any length when the focal length is not known either. */
  static SmearModel ofAnyLensAndLength(SmearField field) {
    SmearModel best = null;
    for (double focal : FOCAL_LENGTHS_PER_DIAGONAL) {
      SmearModel model = ofAnyLength(field.seenThrough(2 * focal * field.halfDiagonalPx));
      if (best == null || model.loss() < best.loss()) {
        best = model;
      }
    }
    return best;
  }

  private record Scored(Direction pole, double loss) {}

  /** The best few of an even grid, judged by some of the stars. */
  private List<Scored> grid() {
    int stride = Math.max(1, field.count() / GRID_STARS);
    List<Scored> grid = new ArrayList<>();
    for (int i = 0; i < GRID_POINTS; i++) {
      Direction pole = halfSphere(i);
      grid.add(new Scored(pole, loss.of(pole, stride)));
    }
    grid.sort(Comparator.comparingDouble(Scored::loss));
    return List.copyOf(grid.subList(0, REFINED));
  }

  private SmearModel refined(List<Scored> starts) {
    SmearModel best = null;
    for (Scored start : starts) {
      Scored here = new Scored(start.pole(), loss.of(start.pole(), 1));
      SmearModel model = SmearFits.known(field, loss.smear(refine(here).pole()));
      if (best == null || model.loss() < best.loss()) {
        best = model;
      }
    }
    return best;
  }

  /** Even points on the half sphere z >= 0 (golden-angle spiral). */
  private static Direction halfSphere(int i) {
    double z = (i + 0.5) / GRID_POINTS;
    double turn = i * Math.PI * (3 - Math.sqrt(5));
    double radius = Math.sqrt(1 - z * z);
    return Direction.of(radius * Math.cos(turn), radius * Math.sin(turn), z);
  }

  private Scored refine(Scored start) {
    Scored best = start;
    double step = GRID_STEP_RAD / 2;
    for (int move = 0; move < MOST_MOVES && step > LAST_STEP_RAD; move++) {
      Scored better = bestNeighbour(best, step);
      if (better.loss() < best.loss()) {
        best = better;
      } else {
        step /= 2;
      }
    }
    return best;
  }

  private Scored bestNeighbour(Scored centre, double step) {
    Direction pole = centre.pole();
    Direction side =
        Math.abs(pole.z()) < 0.9
            ? Direction.of(-pole.y(), pole.x(), 0)
            : Direction.of(0, -pole.z(), pole.y());
    Scored best = centre;
    for (int i = 0; i < 6; i++) {
      Direction axis = side.rotatedAbout(pole, i * Math.PI / 3);
      Direction moved = pole.rotatedAbout(axis, step);
      Scored scored = new Scored(moved, loss.of(moved, 1));
      if (scored.loss() < best.loss()) {
        best = scored;
      }
    }
    return best;
  }
}
