package rondure.blur;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import rondure.base.RobustStats;

/**
 * The light that each frame gathers per star, relative to the others.
 *
 * <p>Exposure, ISO and f-number tell it. Where no frame of the scene names them, frames whose sky
 * is about as bright as the scene's median were exposed alike, and so were frames that smaller
 * steps than a camera's lead to from those: dew that grows dims stars and sky from frame to frame,
 * while exposures change by a third of a stop at least, and hardly three times on end alike. Of the
 * others nothing is known: a changed exposure and a brighter sky look the same.
 */
final class Gains {
  /** How far the sky may be from the scene's median in frames exposed alike: a third of a stop. */
  private static final double ALIKE_FACTOR = 1.26;

  /** A little less than a camera's smallest step, 2^(1/3) = 1.26. */
  private static final double NO_STEP_FACTOR = 1.25;

  /** Steps alike that no photographer makes one after the other. */
  private static final int STEADY_STEPS = 3;

  private static final double MOST_UNLIKE = 1.6;
  private static final double MOST_STEADY_FACTOR = 1.4;

  private Gains() {}

  /** Gains; 0 where none is known. */
  static List<Double> of(List<FrameEvidence> frames) {
    boolean anyKnown = frames.stream().anyMatch(frame -> frame.gain().isPresent());
    if (anyKnown) {
      return frames.stream().map(frame -> frame.gain().orElse(0.0)).toList();
    }
    double[] levels = frames.stream().mapToDouble(f -> f.field().sky().levelCounts()).toArray();
    boolean[] alike = alike(levels);
    return IntStream.range(0, levels.length).mapToObj(i -> alike[i] ? 1.0 : 0.0).toList();
  }

  /**
   * Whether frames were exposed as most of the scene, as far as the sky tells.
   *
   * @param levels of the sky, in the order of the files, counts
   */
  static boolean[] alike(double[] levels) {
    double usual = RobustStats.median(levels);
    boolean[] led = ledToNext(levels);
    boolean[] alike = new boolean[levels.length];
    for (int i = 0; i < levels.length; i++) {
      boolean fromLast = i > 0 && alike[i - 1] && led[i - 1];
      alike[i] = fromLast || isAlike(levels[i], usual, ALIKE_FACTOR);
    }
    for (int i = levels.length - 2; i >= 0; i--) {
      alike[i] |= alike[i + 1] && led[i];
    }
    return alike;
  }

  /** Whether no change of exposure can be between a frame and the next. */
  private static boolean[] ledToNext(double[] levels) {
    boolean[] led = new boolean[Math.max(0, levels.length - 1)];
    for (int i = 0; i < led.length; i++) {
      led[i] |= isAlike(levels[i], levels[i + 1], NO_STEP_FACTOR);
      if (i >= STEADY_STEPS - 1 && steady(levels, i)) {
        Arrays.fill(led, i - STEADY_STEPS + 1, i + 1, true);
      }
    }
    return led;
  }

  /** Whether the steps up to this one all lead the same way by about as much. */
  private static boolean steady(double[] levels, int lastStep) {
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (int i = lastStep - STEADY_STEPS + 1; i <= lastStep; i++) {
      if (!(levels[i] > 0 && levels[i + 1] > 0)) {
        return false;
      }
      double step = Math.log(levels[i + 1] / levels[i]);
      least = Math.min(least, step);
      most = Math.max(most, step);
    }
    double small = Math.min(Math.abs(least), Math.abs(most));
    double large = Math.max(Math.abs(least), Math.abs(most));
    boolean sameWay = least > 0 || most < 0;
    return sameWay && large <= MOST_UNLIKE * small && large <= Math.log(MOST_STEADY_FACTOR);
  }

  private static boolean isAlike(double level, double other, double factor) {
    return level > 0 && level < factor * other && level > other / factor;
  }
}
