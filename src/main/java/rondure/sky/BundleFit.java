package rondure.sky;

import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.linear.ArrayRealVector;
import rondure.base.RobustStats;
import rondure.base.RobustWeights;

/**
 * Fits one camera, each frame's attitude and each star's direction to sightings, all together:
 * Gauss and Newton's steps with Tukey's weights (a bundle adjustment of a camera that only turns;
 * cf. Hartley 1997, Int. J. Computer Vision 22, 5, from memory). Attitudes are free, so a creeping
 * tripod does not touch the camera; how straight lines of the sky bend does.
 */
final class BundleFit {
  private static final double MEDIAN_PER_SIGMA = Math.sqrt(2 * Math.log(2));
  private static final int HUBER_ROUNDS = 12;
  private static final int MOST_ROUNDS = 24;

  /** Of the standard errors: smaller steps do not matter. */
  private static final double SETTLED_SHARE = 0.03;

  private static final double LONGEST_STEP = 0.1;
  private static final double MOST_K1 = 0.5;

  /** k1 stays this share of the way to where the corner's image would turn back. */
  private static final double K1_MARGIN = 0.95;

  private static final double LARGEST_FIRST_SCALE = 2;
  private static final double LEAST_SCALE = 1e-6;

  private final SightingTable table;
  private final CameraPrior prior;
  private final double[] seconds;
  private final double stepSeconds;
  private final int reference;
  private final Rotation[] attitudes;
  private final Direction[] stars;
  private final double cornerPx;
  private Camera camera;
  private double[] misfits;
  private final double[] weights;
  private double scale;
  private double[] variances = new double[BundleNormal.SHARED];

  private BundleFit(SightingTable table, CameraPrior prior, double[] seconds, double stepSeconds) {
    this.table = table;
    this.prior = prior;
    this.seconds = seconds;
    this.stepSeconds = stepSeconds;
    reference = table.reference();
    cornerPx = Math.hypot(prior.nominal().centreXPx(), prior.nominal().centreYPx());
    camera = prior.nominal();
    camera = kept(camera.focalLengthPx(), camera.k1());
    BundleStart start = new BundleStart(table, camera);
    attitudes = start.attitudes;
    stars = start.stars;
    misfits = misfits();
    weights = new double[misfits.length];
    scale = scale();
  }

  private BundleFit(BundleFit from) {
    table = from.table;
    prior = from.prior;
    seconds = from.seconds;
    stepSeconds = from.stepSeconds;
    reference = from.reference;
    cornerPx = from.cornerPx;
    camera = from.camera;
    attitudes = from.attitudes.clone();
    stars = from.stars.clone();
    misfits = from.misfits;
    weights = new double[misfits.length];
    scale = from.scale;
  }

  /**
   * The fit without a clock.
   *
   * @param seconds of the table's frames, NaN where unknown
   * @param stepSeconds of their clock
   */
  static BundleFit of(
      SightingTable table, CameraPrior prior, double[] seconds, double stepSeconds) {
    BundleFit fit = new BundleFit(table, prior, seconds, stepSeconds);
    fit.iterate(Optional.empty());
    return fit;
  }

  /**
   * Goes on from here with the sky's known rate as one more measurement.
   *
   * @return empty when there is no clock to tell the rate
   */
  Optional<BundleFit> atSiderealRate() {
    Optional<RateLine> line = rate();
    if (line.isEmpty()) {
      return Optional.empty();
    }
    BundleFit fit = new BundleFit(this);
    fit.iterate(line);
    return Optional.of(fit);
  }

  Camera camera() {
    return camera;
  }

  /** The steady spin that the attitudes show. */
  Optional<RateLine> rate() {
    return RateLine.of(attitudes, seconds, stepSeconds);
  }

  /** Standard error of ln f, the prior included. */
  double focalError() {
    return Math.sqrt(variances[0]);
  }

  double k1Error() {
    return Math.sqrt(variances[1]);
  }

  /** Typical misfit over the stated errors, per axis. */
  double scale() {
    double median = RobustStats.median(misfits);
    return Double.isNaN(median)
        ? 1
        : Math.max(LEAST_SCALE, median / MEDIAN_PER_SIGMA / Math.sqrt(freeShare()));
  }

  /** Root mean square misfit per axis of the sightings that count, px; NaN when none does. */
  double residualPx() {
    double sum = 0;
    int used = 0;
    for (int i = 0; i < misfits.length; i++) {
      if (misfits[i] < RobustWeights.TUKEY_CONSTANT * scale) {
        sum += misfits[i] * misfits[i] * table.errors[i] * table.errors[i];
        used++;
      }
    }
    return Math.sqrt(sum / (2 * used));
  }

  /** Share of the sightings that count. */
  double inlierShare() {
    return Arrays.stream(misfits).filter(m -> m < RobustWeights.TUKEY_CONSTANT * scale).count()
        / (double) misfits.length;
  }

  /** Tukey's loss at a scale common to the fits compared, like chi squared, with the prior's. */
  double criterion(double commonScale) {
    double sum = prior.chi2(camera);
    double most = RobustWeights.TUKEY_CONSTANT * RobustWeights.TUKEY_CONSTANT / 3;
    for (double misfit : misfits) {
      double share = misfit / (commonScale * RobustWeights.TUKEY_CONSTANT);
      double left = share < 1 ? 1 - share * share : 0;
      sum += most * (1 - left * left * left);
    }
    return sum;
  }

  /** Share of the numbers measured that the unknowns leave free. */
  private double freeShare() {
    double measured = 2.0 * table.count();
    double unknown = 2.0 * table.tracks() + 3.0 * (table.frames() - 1) + 2;
    return Math.max(0.05, 1 - unknown / measured);
  }

  /** Huber's weights until all is settled, then Tukey's. */
  private void iterate(Optional<RateLine> sky) {
    boolean huber = sky.isEmpty();
    for (int round = 0; round < MOST_ROUNDS; round++) {
      // A camera still far off makes large misfits: they must not make the stars look uncertain.
      scale = huber ? Math.min(scale(), LARGEST_FIRST_SCALE) : scale();
      BundleNormal normal = new BundleNormal(table.frames(), reference);
      BundleNormal.Track[] tracks = fill(normal, huber);
      addPrior(normal);
      if (sky.isPresent()) {
        addRate(normal, sky.get());
      }
      BundleNormal.Step step = normal.solve();
      double moved = apply(step.step(), tracks);
      settleStars();
      misfits = misfits();
      double growth = growth();
      Arrays.setAll(variances, i -> growth * step.covariance().getEntry(i, i));
      boolean settled = moved < SETTLED_SHARE * Math.min(focalError(), k1Error());
      if (settled && !huber) {
        break;
      }
      huber = huber && !settled && round < HUBER_ROUNDS;
    }
    scale = scale();
  }

  private BundleNormal.Track[] fill(BundleNormal normal, boolean huber) {
    weigh(huber);
    BundleNormal.Track[] tracks = new BundleNormal.Track[table.tracks()];
    for (int track = 0; track < tracks.length; track++) {
      int first = table.firstOfTrack[track];
      int end = table.firstOfTrack[track + 1];
      tracks[track] = normal.new Track(end - first);
      for (int i = first; i < end; i++) {
        if (weights[i] > 0) {
          Line line = line(i, track);
          tracks[track].add(table.frame[i], weights[i], line.slopes, line.misfit);
        }
      }
      tracks[track].eliminate();
    }
    return tracks;
  }

  private void weigh(boolean huber) {
    for (int i = 0; i < weights.length; i++) {
      double u = misfits[i] / scale;
      double weight = huber ? RobustWeights.huber(u) : RobustWeights.tukey(u);
      double error = table.errors[i] * scale;
      weights[i] = Double.isInfinite(u) ? 0 : weight / (error * error);
    }
  }

  /**
   * A sighting's misfit in x and y, and its slopes by ln f, k1, three of the attitude, the star's
   * two.
   */
  private static final class Line {
    final double[][] slopes;
    final double[] misfit;

    Line(double[][] slopes, double[] misfit) {
      this.slopes = slopes;
      this.misfit = misfit;
    }
  }

  private Line line(int i, int track) {
    Rotation attitude = attitudes[table.frame[i]];
    Direction seen = attitude.apply(stars[track]);
    ImagePoint at = camera.project(seen).orElseThrow();
    FlowJacobian flow = camera.jacobian(at.xPx(), at.yPx());
    double x = at.xPx() - camera.centreXPx();
    double y = at.yPx() - camera.centreYPx();
    double rho2 = Math.pow(camera.projection().radius(Math.acos(Math.min(1, seen.z()))), 2);
    double byK1 = rho2 / (1 + camera.k1() * rho2);
    Spin[] turns = starTurns(stars[track]);
    ImageVelocity one = flow.times(turned(attitude, turns[0]));
    ImageVelocity two = flow.times(turned(attitude, turns[1]));
    double[][] slopes = {
      {x, x * byK1, flow.xByX(), flow.xByY(), flow.xByZ(), one.xPxPerS(), two.xPxPerS()},
      {y, y * byK1, flow.yByX(), flow.yByY(), flow.yByZ(), one.yPxPerS(), two.yPxPerS()}
    };
    return new Line(slopes, new double[] {table.xs[i] - at.xPx(), table.ys[i] - at.yPx()});
  }

  /** Two unit turns, across a star's direction and each other, that move it. */
  private static Spin[] starTurns(Direction s) {
    Direction one =
        Math.abs(s.z()) > 0.5 ? Direction.of(s.z(), 0, -s.x()) : Direction.of(-s.y(), s.x(), 0);
    return new Spin[] {
      new Spin(one.x(), one.y(), one.z()),
      new Spin(
          s.y() * one.z() - s.z() * one.y(),
          s.z() * one.x() - s.x() * one.z(),
          s.x() * one.y() - s.y() * one.x())
    };
  }

  private static Spin turned(Rotation attitude, Spin unit) {
    Direction d = attitude.apply(Direction.of(unit.xRadPerS(), unit.yRadPerS(), unit.zRadPerS()));
    return new Spin(d.x(), d.y(), d.z());
  }

  private void addPrior(BundleNormal normal) {
    Camera nominal = prior.nominal();
    normal.addRow(
        new double[] {1},
        Math.log(nominal.focalLengthPx() / camera.focalLengthPx()),
        prior.focalShare());
    normal.addRow(new double[] {0, 1}, nominal.k1() - camera.k1(), prior.k1Error());
  }

  /** d ln rate of the line through the attitudes against the sidereal one. */
  private void addRate(BundleNormal normal, RateLine line) {
    Optional<RateLine> now = rate();
    if (now.isEmpty()) {
      return;
    }
    Spin spin = now.get().spin;
    double square = spin.rateRadPerS() * spin.rateRadPerS();
    double[] row = new double[BundleNormal.column(table.frames())];
    for (int f = 0; f < table.frames(); f++) {
      double slope = now.get().slopePerFrame[f] / square;
      row[BundleNormal.column(f)] = slope * spin.xRadPerS();
      row[BundleNormal.column(f) + 1] = slope * spin.yRadPerS();
      row[BundleNormal.column(f) + 2] = slope * spin.zRadPerS();
    }
    normal.addRow(row, -Math.log(now.get().rateShare()), line.errorShare);
  }

  /** Moves everything by a step; how far the camera's own two went. */
  private double apply(ArrayRealVector step, BundleNormal.Track[] tracks) {
    double asked = Math.max(Math.abs(step.getEntry(0)), Math.abs(step.getEntry(1)));
    double share = Math.min(1, LONGEST_STEP / Math.max(1e-300, asked));
    ArrayRealVector taken = new ArrayRealVector(step.mapMultiply(share).toArray(), false);
    double[] values = taken.toArray();
    for (int track = 0; track < tracks.length; track++) {
      double[] own = tracks[track].starStep(step.toArray());
      turnStar(track, share * own[0], share * own[1]);
    }
    for (int f = 0; f < table.frames(); f++) {
      if (attitudes[f] != null && f != reference) {
        int at = BundleNormal.column(f);
        Rotation turn = Rotation.ofVector(values[at], values[at + 1], values[at + 2]);
        attitudes[f] = attitudes[f].then(turn);
      }
    }
    Camera before = camera;
    camera = kept(camera.focalLengthPx() * Math.exp(values[0]), camera.k1() + values[1]);
    return Math.max(
        Math.abs(Math.log(camera.focalLengthPx() / before.focalLengthPx())),
        Math.abs(camera.k1() - before.k1()));
  }

  /**
   * Brings each star to where the moved camera's sightings want it: what its straight step lacks
   * (the square of a change in scale times a place far from the centre) is many pixels.
   */
  private void settleStars() {
    for (int track = 0; track < stars.length; track++) {
      BundleNormal.Star star = new BundleNormal.Star();
      for (int i = table.firstOfTrack[track]; i < table.firstOfTrack[track + 1]; i++) {
        if (weights[i] > 0 && isInView(i, track)) {
          Line line = line(i, track);
          star.add(weights[i], line.slopes, line.misfit);
        }
      }
      double[] step = star.step();
      turnStar(track, step[0], step[1]);
    }
  }

  private boolean isInView(int i, int track) {
    return camera.project(attitudes[table.frame[i]].apply(stars[track])).isPresent();
  }

  private void turnStar(int track, double one, double two) {
    if (stars[track] != null) {
      Spin[] turns = starTurns(stars[track]);
      Spin turn = turns[0].times(one).plus(turns[1].times(two));
      stars[track] = Rotation.of(turn, 1).apply(stars[track]);
    }
  }

  /** The camera with k1 kept where the whole frame's image grows with the angle. */
  private Camera kept(double focalLengthPx, double k1) {
    double corner = cornerPx / focalLengthPx;
    double least = -K1_MARGIN * 4 / (27 * corner * corner);
    return camera.with(focalLengthPx, Math.max(least, Math.min(MOST_K1, k1)));
  }

  /** Distance of each sighting from its prediction over its error; infinite out of view. */
  private double[] misfits() {
    double[] all = new double[table.count()];
    Arrays.fill(all, Double.POSITIVE_INFINITY);
    for (int track = 0; track < table.tracks(); track++) {
      for (int i = table.firstOfTrack[track]; i < table.firstOfTrack[track + 1]; i++) {
        Rotation attitude = attitudes[table.frame[i]];
        if (attitude != null && stars[track] != null) {
          Optional<ImagePoint> at = camera.project(attitude.apply(stars[track]));
          ImagePoint seen = new ImagePoint(table.xs[i], table.ys[i]);
          all[i] = at.map(p -> p.distanceTo(seen)).orElse(Double.POSITIVE_INFINITY);
          all[i] /= table.errors[i];
        }
      }
    }
    return all;
  }

  /** Covariance of a Tukey fit over that of its weighted least squares. */
  private double growth() {
    double slope = 0;
    double influence = 0;
    double weights = 0;
    for (double misfit : misfits) {
      double u = misfit / scale;
      double weight = RobustWeights.tukey(u);
      weights += weight;
      slope += weight > 0 ? RobustWeights.tukeySlope(u, 2) : 0;
      influence += weight > 0 ? weight * weight * u * u / 2 : 0;
    }
    return slope > 0 ? influence * weights / (slope * slope * freeShare()) : 1;
  }
}
