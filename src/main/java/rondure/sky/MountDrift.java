package rondure.sky;

import java.util.List;
import java.util.Optional;
import rondure.base.RobustStats;

/**
 * How the stars drift in a camera on a mount that follows the sky.
 *
 * <p>A mount that turns at ω about an axis m leaves the stars the spin ω (m - n), n the north
 * celestial pole: its length over ω is the angle between both (2 sin of its half), and its
 * direction that in which the axis's northern end lies off the pole. A wrong rate adds a spin along
 * m.
 *
 * @param spin of the stars in camera axes, the middle one of the frames; not zero
 */
public record MountDrift(Spin spin) {

  public MountDrift {
    if (!(spin.rateRadPerS() > 0)) {
      throw new IllegalArgumentException("a drift must have a rate, was " + spin);
    }
  }

  /** That of a scene on a mount; empty where it is none, or no drift is proven. */
  public static Optional<MountDrift> of(SceneSky sky) {
    if (sky.finding() != SceneSky.Finding.TRACKING) {
      return Optional.empty();
    }
    List<Spin> creeps =
        sky.frames().stream().filter(FrameSky::isRegistered).map(FrameSky::creep).toList();
    Spin middle =
        new Spin(
            RobustStats.median(creeps.stream().mapToDouble(Spin::xRadPerS).toArray()),
            RobustStats.median(creeps.stream().mapToDouble(Spin::yRadPerS).toArray()),
            RobustStats.median(creeps.stream().mapToDouble(Spin::zRadPerS).toArray()));
    return middle.rateRadPerS() > 0 ? Optional.of(new MountDrift(middle)) : Optional.empty();
  }

  /** Angle of the mount's axis off the pole if its rate is the sky's, degrees. */
  public double axisOffDeg() {
    double share = spin.rateRadPerS() / SkyMotion.SIDEREAL_RATE_RAD_PER_S;
    return Math.toDegrees(2 * Math.asin(Math.min(1, share / 2)));
  }

  /** Motion of the star image at the frame's centre. */
  public ImageVelocity atCentre(Camera camera) {
    return camera.flow(spin, camera.centreXPx(), camera.centreYPx());
  }
}
