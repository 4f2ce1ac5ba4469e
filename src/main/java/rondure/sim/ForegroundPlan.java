package rondure.sim;

import java.util.List;
import java.util.Objects;

/**
 * The dark land under the sky.
 *
 * @param horizonDeg mean altitude of the skyline; -90 for no land
 * @param reliefDeg height of hills above and below that mean
 * @param treesDeg height of the ragged tree line on top
 * @param brightness of the land, as a share of the sky at the zenith
 * @param texture contrast of the land's pattern, 0 to 1
 * @param lights lamps in the land
 */
public record ForegroundPlan(
    double horizonDeg,
    double reliefDeg,
    double treesDeg,
    double brightness,
    double texture,
    List<GroundLight> lights) {

  /** Nothing but sky in every direction. */
  public static final ForegroundPlan NONE = new ForegroundPlan(-90, 0, 0, 0, 0, List.of());

  public ForegroundPlan {
    Checks.within("horizonDeg", horizonDeg, -90, 60);
    Checks.within("reliefDeg", reliefDeg, 0, 30);
    Checks.within("treesDeg", treesDeg, 0, 20);
    Checks.notNegative("brightness", brightness);
    Checks.within("texture", texture, 0, 1);
    lights = List.copyOf(Objects.requireNonNullElse(lights, List.of()));
  }

  /** No skyline rises above this altitude. */
  double highestDeg() {
    return horizonDeg + reliefDeg + treesDeg;
  }
}
