package rondure.sky;

import java.util.List;
import java.util.Optional;

/** Registers the frames of a scene with each other by their stars. */
public final class Registration {
  private Registration() {}

  /**
   * A pure function of the star lists and times.
   *
   * @param shots frames of one camera, lens, focal length and size, in time order
   */
  public static SceneSky of(List<SkyShot> shots) {
    SceneSky.Finding finding =
        shots.size() < 2 ? SceneSky.Finding.ONE_FRAME : SceneSky.Finding.NO_MATCH;
    Optional<Camera> camera =
        shots.stream()
            .flatMap(
                s ->
                    s.focalLengthPx().stream()
                        .map(f -> Camera.rectilinear(f, s.field().widthPx(), s.field().heightPx())))
            .findFirst();
    return SceneSky.unknown(finding, camera, shots.size());
  }
}
