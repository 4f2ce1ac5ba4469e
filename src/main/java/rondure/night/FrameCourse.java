package rondure.night;

import java.util.Optional;
import rondure.base.Orientation;
import rondure.blur.FrameLight;
import rondure.sky.Camera;
import rondure.sky.FrameSky;
import rondure.sky.ImageVelocity;
import rondure.sky.SceneSky;

/**
 * What changed from frame to frame: the quantities that a night's events are read from.
 *
 * @param lightLostMag light that its stars lost beside the scene's clear frames, mag
 * @param lightLostErrorMag standard error of that
 * @param skyMag brightness of the sky for equal exposure, ISO and f-number, mag on a scale of the
 *     camera's own: smaller is brighter
 * @param jumpPx how far the camera turned between the frame before and this one, the sky's turning
 *     and any steady motion taken off, as a way of the image's centre; empty where it is not known,
 *     0 where none is proven
 * @param jumpShare the same over the longer side of the frame
 * @param creep the camera's steady turning, where it is proven
 */
public record FrameCourse(
    Optional<Double> lightLostMag,
    Optional<Double> lightLostErrorMag,
    Optional<Double> skyMag,
    Optional<Double> jumpPx,
    Optional<Double> jumpShare,
    Optional<Creep> creep) {

  /** A frame of which nothing is known. */
  public static final FrameCourse UNKNOWN =
      new FrameCourse(
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty());

  /**
   * A steady turning of the camera.
   *
   * @param pxPerMin way of the image's centre
   * @param angleDeg where the camera's aim moves to, as displayed: 0 = to the right, 90 = down,
   *     below 360
   */
  public record Creep(double pxPerMin, double angleDeg) {

    static Creep of(ImageVelocity stars, Orientation orientation) {
      double x = orientation.displayX(stars.xPxPerS(), stars.yPxPerS(), 1, 1);
      double y = orientation.displayY(stars.xPxPerS(), stars.yPxPerS(), 1, 1);
      double aim = Math.toDegrees(Math.atan2(-y, -x));
      return new Creep(60 * stars.speedPxPerS(), (aim + 360) % 360);
    }
  }

  static FrameCourse of(SceneReading reading, int index, Optional<FrameLight.Loss> loss) {
    Shot shot = reading.shots().get(index);
    SceneSky sky = reading.sky();
    FrameSky frame = sky.frames().get(index);
    Optional<Camera> camera = sky.camera().filter(c -> frame.isRegistered());
    Optional<Double> jumpPx = camera.map(c -> frame.jumpRad() * c.focalLengthPx());
    return new FrameCourse(
        loss.map(FrameLight.Loss::lossMag),
        loss.map(FrameLight.Loss::errorMag),
        skyMag(shot, reading.measurement(index).field().sky().levelFraction()),
        jumpPx,
        jumpShare(reading, index),
        camera
            .map(c -> c.flow(frame.creep(), c.centreXPx(), c.centreYPx()))
            .filter(flow -> flow.speedPxPerS() > 0)
            .map(flow -> Creep.of(flow, shot.facts().orientation())));
  }

  /** How far the camera turned before a frame, over the longer side; empty where not known. */
  static Optional<Double> jumpShare(SceneReading reading, int index) {
    FrameSky frame = reading.sky().frames().get(index);
    MeasuredExposure exposure = reading.shots().get(index).exposure();
    double longSidePx = Math.max(exposure.widthPx(), exposure.heightPx());
    return reading
        .sky()
        .camera()
        .filter(c -> frame.isRegistered())
        .map(c -> frame.jumpRad() * c.focalLengthPx() / longSidePx);
  }

  private static Optional<Double> skyMag(Shot shot, double levelFraction) {
    return shot.gain()
        .filter(gain -> levelFraction > 0)
        .map(gain -> -2.5 * Math.log10(levelFraction / gain));
  }
}
