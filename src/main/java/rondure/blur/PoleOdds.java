package rondure.blur;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import rondure.sky.Direction;
import rondure.sky.SkyMotion;

/**
 * Whose the smear of a lone frame is, by counting: poles even over the sphere, each with the trail
 * that the exposure then gives, beside a camera that is calm or shakes by any amount.
 *
 * <p>The sky always turns, so that a smear of about the largest trail possible is likely the sky's,
 * a smaller one more likely the camera's, one beyond it surely; and over a wide field only few
 * poles draw the directions seen. Each pair of a pole and a shake counts with the probability that
 * it would show these directions (Bayes); the sky has those in which its trail is the larger.
 *
 * @param skyLogOdds for the sky against the camera
 * @param pole the likeliest, if the sky has the smear
 */
record PoleOdds(double skyLogOdds, Direction pole) {
  private static final int POLES = 12_000;

  /** Of lone frames with a smear; common practice knows no number. */
  private static final double SHAKEN = 0.5;

  /** On a mount the sky adds nothing, what smears is the mount's: as the tripod's. */
  private static final double MOUNTED = 0.1;

  /** Spin-2 of shakes, even in their logarithm, px². */
  private static final double[] SHAKES_PX2 = {0.15, 0.4, 1, 2.5, 6, 15};

  /** What lenses stretch alike over the field, and trails miss their model by. */
  private static final double CALM_PX2 = 0.02;

  private static final double CALM_SHARE = 0.03;

  private static final double MOST_FOR_SKY = 3;

  private static final double MOST_AGAINST_SKY = 4;

  /** Of a frame whose focal length and exposure are known. */
  static PoleOdds of(SmearField field, double exposureSeconds) {
    double perSecond = SkyMotion.SIDEREAL_RATE_RAD_PER_S * field.camera.focalLengthPx();
    double[] trails =
        DoubleStream.of(exposureSeconds, roundedSeconds(exposureSeconds))
            .map(seconds -> square(seconds * perSecond) / 12)
            .toArray();
    Count count = new Count(SmearSum.of(field));
    for (double trail : trails) {
      count.add(trail, (1 - MOUNTED) / trails.length);
    }
    count.add(0, MOUNTED);
    return count.result();
  }

  /** Makers round exposures: 30 s is truly 32 (the nearest 2^(n/3), common practice). */
  private static double roundedSeconds(double seconds) {
    return Math.pow(2, Math.rint(3 * Math.log(seconds) / Math.log(2)) / 3);
  }

  private static double square(double x) {
    return x * x;
  }

  /** Even points on the half sphere z >= 0 (golden-angle spiral): ± a pole trail alike. */
  private static Direction pole(int i) {
    double z = (i + 0.5) / POLES;
    double turn = i * Math.PI * (3 - Math.sqrt(5));
    double radius = Math.sqrt(1 - z * z);
    return Direction.of(radius * Math.cos(turn), radius * Math.sin(turn), z);
  }

  /** Sums over poles and shakes, in logarithms about the largest so far. */
  private static final class Count {
    private final SmearSum stars;
    private final double[][] information;
    private final double[] pull;
    private double largest = Double.NEGATIVE_INFINITY;
    private double sky = 0;
    private double camera = 0;
    private double best = Double.NEGATIVE_INFINITY;
    private Direction bestPole = Direction.of(0, 0, 1);

    Count(SmearSum stars) {
      this.stars = stars;
      information = stars.information();
      pull = stars.pull();
    }

    void add(double trailPx2, double weight) {
      List<Shaking> shakes = new ArrayList<>();
      double calm = CALM_PX2 + CALM_SHARE * trailPx2;
      shakes.add(new Shaking(information, calm, calm, Math.log(weight * (1 - SHAKEN))));
      for (double px2 : SHAKES_PX2) {
        double each = Math.log(weight * SHAKEN / SHAKES_PX2.length);
        shakes.add(new Shaking(information, Math.hypot(px2, calm), calm, each));
      }
      int poles = trailPx2 > 0 ? POLES : 1;
      for (int i = 0; i < poles; i++) {
        addPole(pole(i), trailPx2, shakes, -Math.log(poles));
      }
    }

    private void addPole(Direction pole, double trailPx2, List<Shaking> shakes, double logShare) {
      double[] sigma = sigma(pole, trailPx2);
      double[] left = new double[SmearSum.SIZE];
      double half = 0;
      for (int j = 0; j < left.length; j++) {
        double pressed = SmearSum.dot(information[j], sigma);
        left[j] = pull[j] - pressed;
        half += sigma[j] * (pull[j] - pressed / 2);
      }
      double trail = stars.roundPx2(sigma);
      for (int k = 0; k < shakes.size(); k++) {
        Shaking shaking = shakes.get(k);
        double log = half + logShare + shaking.logGain(left);
        boolean skys = k == 0 || trail > shaking.roundPx2(left);
        count(log, skys && trail > 0);
        if (skys && log > best) {
          best = log;
          bestPole = pole;
        }
      }
    }

    private void count(double log, boolean skys) {
      if (log > largest) {
        double shrink = Math.exp(largest - log);
        sky *= shrink;
        camera *= shrink;
        largest = log;
      }
      double share = Math.exp(log - largest);
      sky += skys ? share : 0;
      camera += skys ? 0 : share;
    }

    PoleOdds result() {
      double odds = Math.log((sky + 1e-12) / (camera + 1e-12));
      return new PoleOdds(Math.max(-MOST_AGAINST_SKY, Math.min(MOST_FOR_SKY, odds)), bestPole);
    }

    private static double[] sigma(Direction n, double trailPx2) {
      return new double[] {
        trailPx2 * n.x() * n.x(),
        trailPx2 * n.x() * n.y(),
        trailPx2 * n.x() * n.z(),
        trailPx2 * n.y() * n.y(),
        trailPx2 * n.y() * n.z(),
        trailPx2 * n.z() * n.z()
      };
    }
  }
}
