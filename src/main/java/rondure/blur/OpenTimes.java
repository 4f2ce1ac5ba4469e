package rondure.blur;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rondure.base.RobustStats;
import rondure.sky.FrameSky;
import rondure.sky.Rotation;
import rondure.sky.SceneSky;

/**
 * How long the shutter was open, in the scene's own time, where its facts do not tell: from the
 * stretch along the stars' known motion.
 *
 * <p>The sky stretches frames of one exposure alike and along its motion; shake does neither. So
 * frames whose stretch has the motion's direction and the same amount in others (at least {@link
 * #LEAST_ALIKE} of them) were stretched by the sky; what a frame has beyond them is the tripod's.
 * Where exposures changed, the stars' light may tell by how much. Where a frame's amount is its
 * own, they may have changed unseen: then its stretch along the motion is the sky's or the
 * tripod's, undecided. No exposure is longer than the time between two frames.
 *
 * <p>A head that gives way steadily, or a mount that follows the sky badly, stretches all frames
 * alike and along the motion as well. The rate of the motion tells it from the sky (see {@link
 * DroopDoubt}), where there is a clock; else lamps, skyline and axis may (see {@link
 * StandingCamera}).
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

  /**
   * Before anything tells: tripods mostly stand, yet as causes of one and the same stretch, which
   * nothing in stars tells apart, both are to be about as likely.
   */
  private static final double STANDS = 0.6;

  private static final double CALM = 0.25;
  private static final double LEAST_SQUARE = 1e-6;

  private OpenTimes() {}

  /**
   * @param seconds open, in the time in which the scene's spins are given
   * @param skyProbability that a stretch along the motion as long as that is the sky's
   */
  record Reading(double seconds, double skyProbability) {
    Reading {
      if (!(seconds > 0 && skyProbability >= 0 && skyProbability <= 1)) {
        throw new IllegalArgumentException(
            "seconds must be > 0, a probability in [0, 1], were "
                + seconds
                + ", "
                + skyProbability);
      }
    }

    /** From a fitted square, which noise may take below 0: no shutter is open that briefly. */
    static Reading ofSquare(double square, double skyProbability) {
      return new Reading(Math.sqrt(Math.max(LEAST_SQUARE, square)), skyProbability);
    }

    /** As the facts tell it. */
    static Reading told(double seconds) {
      return new Reading(seconds, 1);
    }
  }

  /**
   * One frame's stretch.
   *
   * @param place in the scene
   * @param stretch along and across its motion
   * @param longer its light over the scene's usual: what its exposure is longer by, if nothing else
   *     changed
   */
  record Seen(int place, AlongMotion stretch, double longer) {
    /** What the stretch would be at the scene's usual light, s². */
    double usualSquare() {
      return stretch.along() / (longer * longer);
    }
  }

  /** One frame's reading, with its place in the scene. */
  record Found(int place, Reading reading) {}

  /** The readings of some frames of a scene, in their order. */
  static List<Found> of(SceneEvidence scene, List<Seen> frames) {
    double longest = Math.pow(LONGEST_OVER_SPACING * spacingSeconds(scene), 2);
    List<Seen> possible =
        frames.stream()
            .filter(f -> f.stretch().isAligned() && f.stretch().along() <= longest)
            .toList();
    boolean rateTold = scene.sky().finding() == SceneSky.Finding.SKY_TURNS;
    double byGround = rateTold ? 0 : StandingCamera.logOddsByGround(scene);
    List<Found> readings = new ArrayList<>();
    for (Seen frame : frames) {
      Reading reading = reading(frame, possible);
      boolean doubted = reading.skyProbability() <= ALONE_IS_SKY;
      double byAxis = rateTold || doubted ? 0 : logOddsByAxis(scene, frame.place());
      // What is undecided already between the sky and any tripod leaves room for a creep.
      double least = doubted ? STANDS : 1;
      double stands = rateTold ? 1 : Math.min(1, stands(byGround + byAxis) / least);
      readings.add(
          new Found(
              frame.place(), new Reading(reading.seconds(), reading.skyProbability() * stands)));
    }
    return readings;
  }

  /** Probability that the camera stood. */
  private static double stands(double logOdds) {
    return Excess.logistic(Math.log(STANDS / (1 - STANDS)) + logOdds);
  }

  private static double logOddsByAxis(SceneEvidence scene, int place) {
    FrameSky frame = scene.sky().frames().get(scene.places().get(place));
    return StandingCamera.logOddsByAxis(scene.sky().finding(), frame);
  }

  /**
   * @param possible frames whose stretch may be the sky's, itself among them if so
   */
  private static Reading reading(Seen own, List<Seen> possible) {
    boolean aligned = possible.contains(own);
    double[] alike = alike(own, possible, 1);
    double[] scaled = alike(own, possible, own.longer());
    if (aligned && Math.max(alike.length, scaled.length) >= 2) {
      boolean byLight = scaled.length > alike.length;
      return steady(byLight ? scaled : alike);
    }
    if (aligned && own.stretch().along() > SIGMAS * own.stretch().errorOfBoth()) {
      return Reading.ofSquare(own.stretch().along(), ALONE_IS_SKY);
    }
    double[] usual = possible.stream().mapToDouble(f -> f.usualSquare() * square(own)).toArray();
    if (usual.length < 2) {
      return Reading.ofSquare(own.stretch().along(), ALONE_IS_SKY);
    }
    // Shaken across its motion: what the sky did shows in the calmest of the others.
    return Reading.ofSquare(RobustStats.percentile(CALM, usual), ALIKE_IS_SKY);
  }

  private static double square(Seen frame) {
    return frame.longer() * frame.longer();
  }

  private static Reading steady(double[] squares) {
    double square = RobustStats.median(squares);
    return Reading.ofSquare(square, squares.length >= LEAST_ALIKE ? ALIKE_IS_SKY : PAIR_IS_SKY);
  }

  /**
   * Squared exposures as this frame should have them by those of the others that agree with it.
   *
   * @param longer 1: exposures alike; the frame's own: exposures as the light
   */
  private static double[] alike(Seen own, List<Seen> possible, double longer) {
    boolean byLight = longer != 1;
    return possible.stream()
        .filter(f -> isAlike(f, own, byLight))
        .mapToDouble(f -> byLight ? f.usualSquare() * square(own) : f.stretch().along())
        .toArray();
  }

  private static boolean isAlike(Seen one, Seen own, boolean byLight) {
    double ratio = byLight ? square(own) / square(one) : 1;
    double there = one.stretch().along() * ratio;
    double error = Math.hypot(one.stretch().errorOfBoth() * ratio, own.stretch().errorOfBoth());
    double larger = Math.max(there, own.stretch().along());
    return Math.abs(there - own.stretch().along()) < Math.max(SIGMAS * error, ALIKE_SHARE * larger);
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
