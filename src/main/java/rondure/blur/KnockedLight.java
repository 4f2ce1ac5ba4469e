package rondure.blur;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import rondure.sky.Camera;

/**
 * Light that a knock drew out, too faintly to be seen: a frame beside which the camera jumped, and
 * that alone lost light. A cloud for one frame, just then, would be a rare chance.
 *
 * @param jumpPx how far the camera turned before or after it
 * @param lostShare of the light of its stars
 */
record KnockedLight(double jumpPx, double lostShare) {
  /** How sure that is: a cloud may pass all the same. */
  static final double PROVEN = 0.9;

  private static final double LEAST_JUMP_PX = 3;

  /** Over the longer side: larger turns are new aims, where other stars stand. */
  private static final double LARGEST_JUMP_SHARE = 0.05;

  private static final double LEAST_MAG = 0.1;
  private static final double SURE_SIGMAS = 3;

  /** Of its loss, that its neighbours may have at most. */
  private static final double NEIGHBOURS_SHARE = 0.5;

  /** For each frame of a scene. */
  static List<Optional<KnockedLight>> of(SceneEvidence scene, List<FrameLight> lights) {
    return IntStream.range(0, lights.size()).mapToObj(i -> of(scene, lights, i)).toList();
  }

  private static Optional<KnockedLight> of(
      SceneEvidence scene, List<FrameLight> lights, int index) {
    double jumpPx = Math.max(jumpPx(scene, index), jumpPx(scene, index + 1));
    int longSidePx =
        Math.max(
            scene.frames().get(index).field().widthPx(),
            scene.frames().get(index).field().heightPx());
    boolean knocked = jumpPx >= LEAST_JUMP_PX && jumpPx <= LARGEST_JUMP_SHARE * longSidePx;
    return lights
        .get(index)
        .loss()
        .filter(loss -> knocked && isAlone(loss, lights, index))
        .map(loss -> new KnockedLight(jumpPx, loss.lostShare()));
  }

  private static double jumpPx(SceneEvidence scene, int index) {
    double pxPerRad = scene.sky().camera().map(Camera::focalLengthPx).orElse(0.0);
    return index == 0 || index >= scene.places().size()
        ? 0
        : scene.sky().frames().get(scene.places().get(index)).jumpRad() * pxPerRad;
  }

  private static boolean isAlone(FrameLight.Loss loss, List<FrameLight> lights, int index) {
    List<Double> beside =
        Stream.of(index - 1, index + 1)
            .filter(i -> i >= 0 && i < lights.size())
            .flatMap(i -> lights.get(i).loss().stream())
            .map(FrameLight.Loss::lossMag)
            .toList();
    return !beside.isEmpty()
        && loss.lossMag() > Math.max(LEAST_MAG, SURE_SIGMAS * loss.errorMag())
        && beside.stream().allMatch(mag -> mag < NEIGHBOURS_SHARE * loss.lossMag());
  }

  Evidence evidence() {
    return new Evidence(
        Evidence.Kind.LIGHT_DRAWN_AWAY, Map.of("jumpPx", jumpPx, "lostPercent", 100 * lostShare));
  }

  /** The odds where that is so. */
  static Map<Cause, Double> mixed(Map<Cause, Double> odds) {
    return Mixing.mix(Mixing.certain(Cause.TRIPOD), PROVEN, odds);
  }
}
