package rondure.night;

import java.util.List;
import java.util.Optional;
import rondure.sky.SceneSky;

/**
 * Frames of one camera, lens, focal length, size and aim, in time order, on one night.
 *
 * @param number counted from 1 over the whole set
 * @param nightIndex the night, from 1
 * @param cameraName as in NightFrame
 * @param focalLengthMm when known
 * @param frames indices into NightBook.frames, time order
 * @param sharpestFwhmPx 10th percentile of the measured frames' widths, when there are any
 * @param solution what the stars told about aim and lens
 */
public record Scene(
    int number,
    int nightIndex,
    String cameraName,
    Optional<Double> focalLengthMm,
    List<Integer> frames,
    Optional<Double> sharpestFwhmPx,
    SceneSolution solution) {
  public Scene {
    frames = List.copyOf(frames);
  }

  /** Whether the camera rode on a mount that follows the sky. */
  public boolean isMounted() {
    return solution.finding() == SceneSky.Finding.TRACKING;
  }
}
