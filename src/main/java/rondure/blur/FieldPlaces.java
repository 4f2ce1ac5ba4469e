package rondure.blur;

import rondure.base.Moments;
import rondure.sky.Camera;
import rondure.sky.ImagePoint;
import rondure.sky.ImageVelocity;
import rondure.sky.Spin;
import rondure.sky.Trail;

/**
 * Places of one frame with what is known of each beforehand: what motion of sky and camera does
 * there.
 *
 * <p>A tensor is three numbers, px²: round (Mxx + Myy)/2, along (Mxx - Myy)/2, diagonal Mxy, at
 * {@code [3 i]}, {@code [3 i + 1]}, {@code [3 i + 2]} of place i.
 */
final class FieldPlaces {
  final int count;

  /** From the image centre, in half diagonals. */
  final double[] x;

  final double[] y;

  /** The sky's own motion over the nominal exposure. */
  final double[] trail;

  /** All steady motion of the stars over the nominal exposure. */
  final double[] moved;

  /** What a turn of the camera adds that moves the centre by 1 px r.m.s. along x, y; and both. */
  final double[] shakeX;

  final double[] shakeY;
  final double[] shakeXY;

  /** Tensor of the sky's own motion in the image centre. */
  final double[] centreTrail = new double[3];

  /** Tensor of all steady motion in the image centre. */
  final double[] centreMoved = new double[3];

  /** f-number of the scene's widest aperture over this frame's. */
  final double stop;

  final View view;
  final Motion motion;

  /**
   * How the stars move in the frame.
   *
   * @param sky the sky's own motion; none on a mount that follows it
   * @param stars all steady motion
   * @param exposureSeconds nominal
   * @param stop f-number of the scene's widest aperture over this frame's
   */
  record Motion(Spin sky, Spin stars, double exposureSeconds, double stop) {}

  /**
   * @param xsPx stored coordinates
   * @param ysPx stored coordinates
   */
  FieldPlaces(double[] xsPx, double[] ysPx, View view, Motion motion) {
    count = xsPx.length;
    stop = motion.stop();
    this.view = view;
    this.motion = motion;
    x = new double[count];
    y = new double[count];
    trail = new double[3 * count];
    moved = new double[3 * count];
    shakeX = new double[3 * count];
    shakeY = new double[3 * count];
    shakeXY = new double[3 * count];
    Camera camera = view.camera();
    for (int i = 0; i < count; i++) {
      x[i] = (xsPx[i] - camera.centreXPx()) / view.halfDiagonalPx();
      y[i] = (ysPx[i] - camera.centreYPx()) / view.halfDiagonalPx();
      ImagePoint place = new ImagePoint(xsPx[i], ysPx[i]);
      fill(trail, i, steady(camera, motion.sky(), place, motion.exposureSeconds()));
      fill(moved, i, steady(camera, motion.stars(), place, motion.exposureSeconds()));
      fillShake(i, place, camera);
    }
    ImagePoint centre = new ImagePoint(camera.centreXPx(), camera.centreYPx());
    fill(centreTrail, 0, steady(camera, motion.sky(), centre, motion.exposureSeconds()));
    fill(centreMoved, 0, steady(camera, motion.stars(), centre, motion.exposureSeconds()));
  }

  /** Along the exact path; along a straight one for a star that leaves the camera's view. */
  private static Moments steady(Camera camera, Spin spin, ImagePoint place, double seconds) {
    return Trail.moments(camera, spin, place, seconds)
        .orElseGet(
            () -> {
              ImageVelocity velocity = camera.flow(spin, place.xPx(), place.yPx());
              double length = seconds * velocity.speedPxPerS();
              return Moments.line(length, velocity.directionRad());
            });
  }

  private void fillShake(int i, ImagePoint place, Camera camera) {
    double f = camera.focalLengthPx();
    ImageVelocity right = camera.flow(new Spin(0, 1 / f, 0), place.xPx(), place.yPx());
    ImageVelocity down = camera.flow(new Spin(-1 / f, 0, 0), place.xPx(), place.yPx());
    putProduct(shakeX, i, right, right, 1);
    putProduct(shakeY, i, down, down, 1);
    putProduct(shakeXY, i, right, down, 2);
  }

  private static void fill(double[] into, int i, Moments moments) {
    put(into, i, moments.xxPx2(), moments.xyPx2(), moments.yyPx2());
  }

  /** The symmetric part of an outer product, times a factor. */
  private static void putProduct(
      double[] into, int i, ImageVelocity one, ImageVelocity two, double factor) {
    double cross = (one.xPxPerS() * two.yPxPerS() + one.yPxPerS() * two.xPxPerS()) / 2;
    put(
        into,
        i,
        factor * one.xPxPerS() * two.xPxPerS(),
        factor * cross,
        factor * one.yPxPerS() * two.yPxPerS());
  }

  /** Puts a tensor in place as round, along, diagonal. */
  static void put(double[] into, int i, double xx, double xy, double yy) {
    into[3 * i] = (xx + yy) / 2;
    into[3 * i + 1] = (xx - yy) / 2;
    into[3 * i + 2] = xy;
  }
}
