package rondure.blur;

import rondure.sky.Direction;
import rondure.sky.FlowJacobian;
import rondure.sky.ImageVelocity;
import rondure.sky.SkyMotion;
import rondure.sky.Spin;

/** How badly the trails about a pole fit the directions of a frame's stars. */
final class TrailLoss {
  static final double LENGTH_IS_FREE = 0;

  /** Factors are gathered up to here before their logarithm is taken. */
  private static final double LARGE = 1e100;

  private final SmearField field;
  private final double seconds;

  /** How each star's image moves when the sky turns. */
  private final FlowJacobian[] flows;

  /**
   * @param seconds open, or {@link #LENGTH_IS_FREE}
   */
  TrailLoss(SmearField field, double seconds) {
    this.field = field;
    this.seconds = seconds;
    flows = new FlowJacobian[field.count()];
    for (int i = 0; i < flows.length; i++) {
      flows[i] = field.camera.jacobian(field.xs[i], field.ys[i]);
    }
  }

  /** The line's spin-2, L²/24 along its direction; the best-fitting length when it is free. */
  SmearModel.SmearAt smear(Direction pole) {
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

  /**
   * Cauchy's loss of a pole, which never levels off, so that a coarse grid still points to the
   * minimum.
   *
   * @param stride every so many stars are asked
   */
  double of(Direction pole, int stride) {
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
