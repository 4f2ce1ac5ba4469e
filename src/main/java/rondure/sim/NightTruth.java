package rondure.sim;

import java.util.List;

/**
 * The truth about a night: the plan it was rendered from, and what is in each frame.
 *
 * @param plan the recipe
 * @param frames in order
 */
public record NightTruth(NightPlan plan, List<FrameTruth> frames) {
  public NightTruth {
    frames = List.copyOf(frames);
  }
}
