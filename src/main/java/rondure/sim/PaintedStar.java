package rondure.sim;

import rondure.base.Moments;

/**
 * One point of light during one exposure: its path over the sensor, and what blurs it.
 *
 * @param number in its list
 * @param xPx mean of its path
 * @param yPx mean of its path
 * @param electrons its light, without filters
 * @param total all its second moments but the core's
 * @param trailing of the sky's motion alone
 * @param rays of the lens at its place
 * @param trailPx end to end of the sky's motion
 * @param trailRad direction of the sky's motion
 */
record PaintedStar(
    int number,
    double xPx,
    double yPx,
    double electrons,
    Moments total,
    Moments trailing,
    Moments rays,
    double trailPx,
    double trailRad) {

  Moments tripod() {
    return total.minus(trailing).minus(rays);
  }

  StarTruth truth(double greenElectrons, double corePx2, double noiseElectrons) {
    Moments shape = total.plus(Moments.round(corePx2));
    double sigma = Math.sqrt(shape.meanPx2());
    double snr = greenElectrons / (Math.sqrt(4 * Math.PI) * noiseElectrons * sigma);
    double degrees = Math.toDegrees(trailRad);
    return new StarTruth(
        number,
        xPx,
        yPx,
        greenElectrons,
        snr,
        trailPx,
        degrees < 0 ? degrees + 180 : degrees,
        shape.xxPx2(),
        shape.xyPx2(),
        shape.yyPx2());
  }

  /** Paths over the sensor for a set of attitudes; reused from star to star. */
  static final class Path {
    private final ImagePoint image;
    private final double[] point = new double[2];
    final double[] x;
    final double[] y;

    Path(ImagePoint image, int steps) {
      this.image = image;
      this.x = new double[steps];
      this.y = new double[steps];
    }

    /** Follows a direction; false when it leaves the half of the sky that has an image. */
    boolean follow(double[][] attitudes, double[] direction) {
      for (int i = 0; i < attitudes.length; i++) {
        if (!image.of(attitudes[i], direction, point)) {
          return false;
        }
        x[i] = point[0];
        y[i] = point[1];
      }
      return true;
    }

    /** True when any part of the path comes within {@code margin} px of the frame. */
    boolean touches(CameraPlan camera, double margin) {
      for (int i = 0; i < x.length; i++) {
        if (x[i] > -margin
            && x[i] < camera.widthPx() + margin
            && y[i] > -margin
            && y[i] < camera.heightPx() + margin) {
          return true;
        }
      }
      return false;
    }

    Moments moments() {
      return PathMoments.of(x, y, x.length);
    }

    double meanX() {
      return PathMoments.mean(x, x.length);
    }

    double meanY() {
      return PathMoments.mean(y, y.length);
    }

    /** From the first to the last step, stretched to the whole exposure: dx, dy. */
    double[] chord() {
      int last = x.length - 1;
      double stretch = (double) x.length / last;
      return new double[] {stretch * (x[last] - x[0]), stretch * (y[last] - y[0])};
    }
  }

  /** The star that the two paths describe. */
  static PaintedStar of(int number, Path moved, Path calm, Rays rays, double electrons) {
    Moments lens = rays.moments();
    double[] chord = calm.chord();
    double angle = Math.atan2(chord[1], chord[0]);
    return new PaintedStar(
        number,
        moved.meanX(),
        moved.meanY(),
        electrons,
        moved.moments().plus(lens),
        calm.moments(),
        lens,
        Math.hypot(chord[0], chord[1]),
        angle >= Math.PI ? angle - Math.PI : angle);
  }
}
