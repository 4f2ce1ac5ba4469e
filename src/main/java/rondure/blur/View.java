package rondure.blur;

import rondure.sky.Camera;

/**
 * A camera and the size of its frames.
 *
 * @param camera the camera
 * @param widthPx stored width
 * @param heightPx stored height
 */
record View(Camera camera, int widthPx, int heightPx) {

  double halfDiagonalPx() {
    return Math.hypot(widthPx, heightPx) / 2;
  }
}
