package rondure.testing;

import rondure.sim.NightPlan;
import rondure.sim.ShotGroup;

/** Which of a plan's groups of shots a frame is of. */
final class Groups {
  private Groups() {}

  /**
   * The group.
   *
   * @param number of the frame, from 1
   */
  static ShotGroup of(NightPlan plan, int number) {
    int last = 0;
    for (ShotGroup group : plan.shots()) {
      last += group.count();
      if (number <= last) {
        return group;
      }
    }
    throw new IllegalArgumentException("the night has no frame " + number);
  }
}
