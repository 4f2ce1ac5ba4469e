package rondure.blur;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import rondure.base.RobustStats;
import rondure.sky.FrameSky;
import rondure.sky.Rotation;

/**
 * How long the shutter was open, in the scene's own time, where its facts do not tell: from the
 * stretch along the stars' known motion.
 *
 * <p>The sky stretches frames of one exposure alike and along its motion; shake does neither. So
 * frames whose stretch has the motion's direction and the same amount in others (at least {@link
 * #LEAST_ALIKE} of them) were stretched by the sky; what a frame has beyond them is the tripod's.
 * Where a frame's amount is its own, exposures may have changed unseen: then the frame's stretch
 * along the motion is the sky's or the tripod's, undecided. No exposure is longer than the time
 * between two frames.
 */
final class OpenTimes {
  private static final int LEAST_ALIKE = 3;
  private static final double ALIKE_SHARE = 0.2;
  private static final double SIGMAS = 3;
  private static final double LONGEST_OVER_SPACING = 1.15;

  /** Shake that happens to lie along the motion, frame after frame alike, is rare. */
  private static final double ALIKE_IS_SKY = 0.96;

  private static final double PAIR_IS_SKY = 0.85;
  private static final double ALONE_IS_SKY = 0.5;

  private OpenTimes() {}

  /**
   * @param seconds open, in the time in which the scene's spins are given
   * @param skyProbability that a stretch along the motion as long as that is the sky's
   */
  record Reading(double seconds, double skyProbability) {
    /** As the facts tell it. */
    static Reading told(double seconds) {
      return new Reading(seconds, 1);
    }
  }

  /** One frame's stretch, with its place in the scene. */
  record Seen(int place, AlongMotion stretch) {}

  /** One frame's reading, with its place in the scene. */
  record Found(int place, Reading reading) {}

  /** The readings of some frames of a scene, in their order. */
  static List<Found> of(SceneEvidence scene, List<Seen> frames) {
    double longest = Math.pow(LONGEST_OVER_SPACING * spacingSeconds(scene), 2);
    List<Found> readings = new ArrayList<>();
    for (Seen frame : frames) {
      readings.add(new Found(frame.place(), reading(frame, frames, longest)));
    }
    return readings;
  }

  private static Reading reading(Seen frame, List<Seen> frames, double longest) {
    AlongMotion own = frame.stretch();
    List<AlongMotion> steady = steady(own, frames, longest);
    double alike = steady.size();
    if (own.isAligned() && own.along() <= longest && alike >= 2) {
      double middle = middle(steady);
      return new Reading(Math.sqrt(middle), alike >= LEAST_ALIKE ? ALIKE_IS_SKY : PAIR_IS_SKY);
    }
    Optional<Double> below = steadyBelow(own, frames, longest);
    boolean possible = own.isAligned() && own.along() <= longest;
    if (possible && own.along() > SIGMAS * own.errorOfBoth()) {
      return new Reading(Math.sqrt(own.along()), ALONE_IS_SKY);
    }
    double square = below.orElse(Math.min(longest, Math.max(0, own.along())));
    return new Reading(Math.sqrt(square), below.isPresent() ? ALIKE_IS_SKY : PAIR_IS_SKY);
  }

  /** Frames with the motion's direction and this frame's amount, itself among them if so. */
  private static List<AlongMotion> steady(AlongMotion own, List<Seen> frames, double longest) {
    return frames.stream()
        .map(Seen::stretch)
        .filter(s -> s.isAligned() && s.along() <= longest && isAlike(s, own))
        .toList();
  }

  private static boolean isAlike(AlongMotion one, AlongMotion two) {
    double error = Math.hypot(one.errorOfBoth(), two.errorOfBoth());
    double larger = Math.max(one.along(), two.along());
    return Math.abs(one.along() - two.along()) < Math.max(SIGMAS * error, ALIKE_SHARE * larger);
  }

  private static double middle(List<AlongMotion> steady) {
    return Math.max(
        0, RobustStats.median(steady.stream().mapToDouble(AlongMotion::along).toArray()));
  }

  /** The largest steady amount that is not more than this frame's own. */
  private static Optional<Double> steadyBelow(AlongMotion own, List<Seen> frames, double longest) {
    return IntStream.range(0, frames.size())
        .mapToObj(i -> steady(frames.get(i).stretch(), frames, longest))
        .filter(steady -> steady.size() >= LEAST_ALIKE)
        .map(OpenTimes::middle)
        .filter(a -> a <= Math.hypot(own.along(), own.across()) + SIGMAS * own.errorOfBoth())
        .max(Comparator.naturalOrder());
  }

  /** Median time from one frame to the next, by how far the sky turned between them. */
  private static double spacingSeconds(SceneEvidence scene) {
    List<FrameSky> frames = scene.sky().frames();
    List<Double> gaps = new ArrayList<>();
    for (int i = 0; i + 1 < frames.size(); i++) {
      Optional<Rotation> before = frames.get(i).attitude();
      Optional<Rotation> after = frames.get(i + 1).attitude();
      double rate = frames.get(i).starSpin().map(s -> s.rateRadPerS()).orElse(0.0);
      if (before.isPresent() && after.isPresent() && rate > 0) {
        gaps.add(before.get().inverse().then(after.get()).angleRad() / rate);
      }
    }
    return gaps.isEmpty()
        ? Double.POSITIVE_INFINITY
        : RobustStats.median(gaps.stream().mapToDouble(g -> g).toArray());
  }
}
