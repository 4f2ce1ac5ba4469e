package rondure.sky;

import rondure.base.Orientation;

/**
 * What a block's frames were seen with.
 *
 * @param camera as known
 * @param trust how far it is to be trusted
 * @param byClock whether the times are a clock's
 * @param stepSeconds how finely it tells the time
 * @param held how the camera was held, as far as the files say
 */
record Sight(Camera camera, Trust trust, boolean byClock, double stepSeconds, Orientation held) {
  private static final double FINE_SECONDS = 1e-3;

  static Sight of(
      SkyTimes times, double stepSeconds, Camera camera, Trust trust, Orientation held) {
    double step = times.byClock() ? stepSeconds : FINE_SECONDS;
    return new Sight(camera, trust, times.byClock(), step, held);
  }

  /**
   * How far a camera is to be trusted.
   *
   * @param scaleKnown whether its focal length means anything
   * @param found whether it was found from the scene
   * @param doubt how far it may be wrong
   */
  record Trust(boolean scaleKnown, boolean found, CameraDoubt doubt) {
    private static final double LEAST_SCALE_ERROR = 0.0005;

    /** Share by which the focal length may be wrong. */
    double scaleError() {
      return Math.max(LEAST_SCALE_ERROR, Math.sqrt(doubt.focalVariance()));
    }
  }
}
