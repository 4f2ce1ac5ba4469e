package rondure.sky;

import java.util.Objects;
import java.util.Optional;

/**
 * How the stars move in one frame of a scene, in that frame's camera axes at mid-exposure.
 *
 * @param attitude turns directions of the scene's reference axes into this frame's camera axes;
 *     empty when the frame could not be registered
 * @param skySpin the sky's own motion, -ω n; empty when the pole is not known
 * @param creep what the camera adds to it steadily about the time of this frame (a drooping head, a
 *     mount's motion): the stars turn by skySpin + creep; zero when none is proven
 * @param spinErrorRadPerS standard error of skySpin + creep, per axis
 * @param jumpRad how far the camera turned between the frame before and this one, the sky's and any
 *     steady motion taken off; 0 when nothing is proven
 */
public record FrameSky(
    Optional<Rotation> attitude,
    Optional<Spin> skySpin,
    Spin creep,
    double spinErrorRadPerS,
    double jumpRad) {

  /** A frame of which nothing is known. */
  public static final FrameSky UNKNOWN =
      new FrameSky(Optional.empty(), Optional.empty(), Spin.NONE, 0, 0);

  public FrameSky {
    Objects.requireNonNull(attitude, "attitude");
    Objects.requireNonNull(skySpin, "skySpin");
    Objects.requireNonNull(creep, "creep");
    if (!(spinErrorRadPerS >= 0 && jumpRad >= 0)) {
      throw new IllegalArgumentException(
          "errors and jumps must be >= 0, were " + spinErrorRadPerS + ", " + jumpRad);
    }
  }

  public boolean isRegistered() {
    return attitude.isPresent();
  }

  /** The stars' whole motion over the sensor, when the pole is known. */
  public Optional<Spin> starSpin() {
    return skySpin.map(creep::plus);
  }
}
