package rondure.blur;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import rondure.sky.Direction;
import rondure.sky.FlowJacobian;
import rondure.sky.ImageVelocity;
import rondure.sky.SkyMotion;
import rondure.sky.Spin;

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

  private static final double LENGTH_IS_FREE = 0;
  private static final int GRID_STARS = 50;

  /** Factors are gathered up to here before their logarithm is taken. */
  private static final double LARGE = 1e100;

  private final SmearField field;
  private final double seconds;

  /** How each star's image moves when the sky turns. */
  private final FlowJacobian[] flows;

  private TrailFit(SmearField field, double seconds) {
    this.field = field;
    this.seconds = seconds;
    flows = new FlowJacobian[field.count()];
    for (int i = 0; i < flows.length; i++) {
      flows[i] = field.camera.jacobian(field.xs[i], field.ys[i]);
    }
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
    TrailFit fit = new TrailFit(field, LENGTH_IS_FREE);
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
      grid.add(new Scored(pole, cauchyLoss(pole, stride)));
    }
    grid.sort(Comparator.comparingDouble(Scored::loss));
    return List.copyOf(grid.subList(0, REFINED));
  }

  private SmearModel refined(List<Scored> starts) {
    SmearModel best = null;
    for (Scored start : starts) {
      Scored here = new Scored(start.pole(), cauchyLoss(start.pole(), 1));
      SmearModel model = SmearFits.known(field, smear(refine(here).pole()));
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
      Scored scored = new Scored(moved, cauchyLoss(moved, 1));
      if (scored.loss() < best.loss()) {
        best = scored;
      }
    }
    return best;
  }

  /** The line's spin-2, L²/24 along its direction; the best-fitting length when it is free. */
  private SmearModel.SmearAt smear(Direction pole) {
    double squared = squareSeconds(Spin.ofSky(pole));
    return (x, y) -> {
      ImageVelocity velocity = SkyMotion.velocity(field.camera, pole, x, y);
      return new double[] {squared * along(velocity), squared * diagonal(velocity)};
    };
  }

  /** Spin-2 of a second's line, (dx² - dy²)/24 and dx dy/12. */
  private static double along(ImageVelocity velocity) {
    double dx = velocity.xPxPerS();
    double dy = velocity.yPxPerS();
    return (dx * dx - dy * dy) / 24;
  }

  private static double diagonal(ImageVelocity velocity) {
    return velocity.xPxPerS() * velocity.yPxPerS() / 12;
  }

  private double squareSeconds(Spin sky) {
    return seconds == LENGTH_IS_FREE ? fittedSquareSeconds(sky) : seconds * seconds;
  }

  private double fittedSquareSeconds(Spin sky) {
    double product = 0;
    double square = 1e-12;
    for (int i = 0; i < field.count(); i++) {
      ImageVelocity velocity = flows[i].times(sky);
      double along = along(velocity) / field.alongError[i];
      double diagonal = diagonal(velocity) / field.diagonalError[i];
      product +=
          along * field.along[i] / field.alongError[i]
              + diagonal * field.diagonal[i] / field.diagonalError[i];
      square += along * along + diagonal * diagonal;
    }
    return Math.max(0, product / square);
  }

  /** Cauchy's loss never levels off, so that a coarse grid still points to the minimum. */
  private double cauchyLoss(Direction pole, int stride) {
    Spin sky = Spin.ofSky(pole);
    double squared = squareSeconds(sky);
    double loss = 0;
    double product = 1;
    for (int i = 0; i < field.count(); i += stride) {
      ImageVelocity velocity = flows[i].times(sky);
      double along = (field.along[i] - squared * along(velocity)) / field.alongError[i];
      double diagonal = (field.diagonal[i] - squared * diagonal(velocity)) / field.diagonalError[i];
      product *= 1 + (along * along + diagonal * diagonal) / 4;
      if (product > LARGE) {
        loss += Math.log(product);
        product = 1;
      }
    }
    return loss + Math.log(product);
  }
}
