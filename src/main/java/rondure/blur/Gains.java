package rondure.blur;

import java.util.Arrays;
import java.util.List;
import rondure.base.RobustStats;

/**
 * The light that each frame gathers per star, relative to the others.
 *
 * <p>Exposure, ISO and f-number tell it. Where no frame of the scene names them, frames whose sky
 * is about as bright as the scene's median were exposed alike; of the others nothing is known: a
 * changed exposure and a brighter sky look the same.
 */
final class Gains {
  /** How far the sky may be from the scene's median in frames exposed alike: a third of a stop. */
  private static final double ALIKE_FACTOR = 1.26;

  private Gains() {}

  /** Gains; 0 where none is known. */
  static List<Double> of(List<FrameEvidence> frames) {
    boolean anyKnown = frames.stream().anyMatch(frame -> frame.gain().isPresent());
    if (anyKnown) {
      return frames.stream().map(frame -> frame.gain().orElse(0.0)).toList();
    }
    double[] levels = frames.stream().mapToDouble(f -> f.field().sky().levelCounts()).toArray();
    double usual = RobustStats.median(levels);
    return Arrays.stream(levels).mapToObj(level -> isAlike(level, usual) ? 1.0 : 0.0).toList();
  }

  private static boolean isAlike(double level, double usual) {
    return level > 0 && level < ALIKE_FACTOR * usual && level > usual / ALIKE_FACTOR;
  }
}
