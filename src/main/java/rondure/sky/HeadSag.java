package rondure.sky;

import rondure.base.Orientation;

/**
 * What tells a head that sags from a path that bends for another reason. Gravity turns a head about
 * a level axis across the aim: the aim goes down and the picture does not roll. A bend that is
 * taken for a creep makes one about any axis, and about none across the motion that bent: one that
 * slows down is read as a creep at right angles to itself and to the sky's axis.
 */
final class HeadSag {
  /** Roll beside the whole creep. */
  private static final double LARGEST_ROLL_SHARE = 0.1;

  private static final double ROLL_SIGMAS = 2;

  /** Cosine of the largest angle between the aim's way and down, as displayed. */
  private static final double DOWNWARD = 0.5;

  private HeadSag() {}

  /**
   * @param creep what the stars do beside the sky in the camera's axes, rad/s
   * @param rollError standard error of its part about the optical axis, rad/s
   * @param held how the camera was held
   */
  static boolean fits(Vec creep, double rollError, Orientation held) {
    boolean level =
        Math.abs(creep.z()) < LARGEST_ROLL_SHARE * creep.length() + ROLL_SIGMAS * rollError;
    // A star on the axis moves by creep × (0, 0, 1); the aim moves the other way.
    double down = held.displayY(-creep.y(), creep.x(), 1, 1);
    return level && down > DOWNWARD * creep.length();
  }
}
