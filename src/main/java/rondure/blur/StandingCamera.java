package rondure.blur;

import java.util.Optional;
import rondure.sky.FrameSky;
import rondure.sky.SceneSky;
import rondure.sky.Spin;

/**
 * Whether the camera stood while the stars moved steadily over its sensor, or gave way as steadily:
 * by lamps that stay, by the skyline, and, where nothing tells how fast the stars turned, by the
 * axis they turned about.
 */
final class StandingCamera {
  /** One lamp may be a reflection or a hot pixel of a developed file; two are rarely both. */
  private static final double ONE_LAMP_LOG_ODDS = 1;

  private static final double LAMPS_LOG_ODDS = 4;

  /**
   * A factor of two: axes are told through focal lengths that may be off by a quarter, and how
   * heads give way is assumed, so that an axis alone shall hardly name the head.
   */
  private static final double MOST_BY_AXIS = 0.7;

  private StandingCamera() {}

  /** Log-odds from what stands on the ground. */
  static double logOddsByGround(SceneEvidence scene) {
    int lamps = scene.standingLamps();
    double byLamps = lamps == 0 ? 0 : lamps == 1 ? ONE_LAMP_LOG_ODDS : LAMPS_LOG_ODDS;
    return byLamps + SkylineMotion.of(scene).map(SkylineMotion::standingLogOdds).orElse(0.0);
  }

  /** Log-odds from the axis of the stars' motion; 0 where only their motion is known. */
  static double logOddsByAxis(SceneSky.Finding finding, FrameSky frame) {
    Optional<Spin> turning = frame.starSpin().filter(spin -> spin.rateRadPerS() > 0);
    return finding == SceneSky.Finding.CLOCK_UNKNOWN && turning.isPresent()
        ? Math.max(-MOST_BY_AXIS, Math.min(MOST_BY_AXIS, DroopDoubt.calmLogOdds(turning.get())))
        : 0;
  }
}
