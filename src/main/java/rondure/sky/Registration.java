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
 * tripod's motion ({@link BlockSky}). Without a focal length one is looked for ({@link
 * ScaleSearch}).
 */
public final class Registration {

  private Registration() {}

  /**
   * A pure function of the star lists and times.
   *
   * @param shots frames of one camera, lens, focal length and size, in time order
   */
  public static SceneSky of(List<SkyShot> shots) {
    Optional<Camera> nominal = nominal(shots);
    if (shots.size() < 2) {
      return SceneSky.unknown(SceneSky.Finding.ONE_FRAME, nominal, shots.size());
    }
    SceneClock clock = clock(shots);
    if (nominal.isPresent()) {
      return new RegisteredScene(shots, clock, nominal.get(), true).sky();
    }
    ScaleSearch.Found found = new ScaleSearch(shots, clock).find();
    return new RegisteredScene(shots, clock, found.camera(), found.known()).sky();
  }

  private static SceneClock clock(List<SkyShot> shots) {
    double step = shots.stream().mapToDouble(SkyShot::clockStepSeconds).max().orElse(1);
    return new SceneClock(shots.stream().map(SkyShot::midSeconds).toList(), step);
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
