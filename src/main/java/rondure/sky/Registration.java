package rondure.sky;

import java.util.List;
import java.util.Optional;

/**
 * Registers the frames of a scene with each other by their stars and reads from their attitudes how
 * the sky turned and how the camera moved.
 *
 * <p>Steps: star lists to directions through the camera; each frame matched with an earlier one
 * ({@link StarChain}); the camera calibrated from the stars' paths and the frames matched anew with
 * it; one map of the sky's stars and all attitudes ({@link SkyMap}); the sky's spin and the
 * tripod's motion ({@link BlockSky}).
 */
public final class Registration {

  private Registration() {}

  /**
   * A pure function of the star lists and times.
   *
   * @param shots frames of one camera, lens, focal length and size, in time order
   */
  public static SceneSky of(List<SkyShot> shots) {
    Optional<Camera> camera = nominal(shots);
    if (shots.size() < 2) {
      return SceneSky.unknown(SceneSky.Finding.ONE_FRAME, camera, shots.size());
    }
    if (camera.isEmpty()) {
      return SceneSky.unknown(SceneSky.Finding.SCALE_UNKNOWN, camera, shots.size());
    }
    return new RegisteredScene(shots, camera.get()).sky();
  }

  private static Optional<Camera> nominal(List<SkyShot> shots) {
    return shots.stream()
        .flatMap(
            s ->
                s.focalLengthPx().stream()
                    .map(f -> Camera.rectilinear(f, s.field().widthPx(), s.field().heightPx())))
        .findFirst();
  }
}
