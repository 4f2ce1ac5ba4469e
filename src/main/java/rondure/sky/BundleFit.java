package rondure.sky;

import java.util.Arrays;
import java.util.Optional;
import rondure.base.RobustWeights;

/**
 * Fits one camera, each frame's attitude and each star's direction to sightings, all together:
 * Gauss and Newton's steps with Tukey's weights (a bundle adjustment of a camera that only turns;
 * cf. Hartley 1997, Int. J. Computer Vision 22, 5, from memory). Attitudes are free, so a creeping
 * tripod does not touch the camera; how straight lines of the sky bend does.
 */
final class BundleFit {
  private static final int HUBER_ROUNDS = 12;
  private static final int MOST_ROUNDS = 24;

  /** Of the standard errors: smaller steps do not matter. */
  private static final double SETTLED_SHARE = 0.03;

  /** A camera still far off makes large misfits: they must not make the stars look uncertain. */
  private static final double LARGEST_FIRST_SCALE = 2;

  private final Bundle bundle;
  private final CameraPrior prior;
  private final double[] seconds;
  private final double stepSeconds;
  private final double[] weights;
  private final double[] variances = new double[BundleNormal.SHARED];
  private double correlation;
  private double[] misfits;
  private double scale;

  private BundleFit(Bundle bundle, CameraPrior prior, double[] seconds, double stepSeconds) {
    this.bundle = bundle;
    this.prior = prior;
    this.seconds = seconds;
    this.stepSeconds = stepSeconds;
    misfits = bundle.misfits();
    weights = new double[misfits.length];
    scale = scale();
  }

  /**
   * The fit without a clock.
   *
   * @param seconds of the table's frames, NaN where unknown
   * @param stepSeconds of their clock
   */
  static BundleFit of(
      SightingTable table, CameraPrior prior, double[] seconds, double stepSeconds) {
    Bundle start = new Bundle(table, prior.nominal());
    BundleFit fit = new BundleFit(start, prior, seconds, stepSeconds);
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
    BundleFit fit = new BundleFit(new Bundle(bundle), prior, seconds, stepSeconds);
    fit.iterate(line);
    return Optional.of(fit);
  }

  Camera camera() {
    return bundle.camera();
  }

  /** The steady spin that the attitudes show. */
  Optional<RateLine> rate() {
    return bundle.rate(seconds, stepSeconds);
  }

  /** Standard error of ln f, the prior included. */
  double focalError() {
    return Math.sqrt(variances[0]);
  }

  double k1Error() {
    return Math.sqrt(variances[1]);
  }

  /** Correlation of both errors. */
  double correlation() {
    return correlation;
  }

  /** Typical misfit over the stated errors, per axis. */
  double scale() {
    return Misfits.scale(misfits, freeShare());
  }

  /** Root mean square misfit per axis of the sightings that count, px; NaN when none does. */
  double residualPx() {
    double sum = 0;
    int used = 0;
    for (int i = 0; i < misfits.length; i++) {
      if (Misfits.counts(misfits[i], scale)) {
        sum += Math.pow(misfits[i] * bundle.table.errors[i], 2);
        used++;
      }
    }
    return Math.sqrt(sum / (2 * used));
  }

  /** Share of the sightings that count. */
  double inlierShare() {
    return Misfits.inlierShare(misfits, scale);
  }

  /** Misfits at a scale common to the fits compared, like chi squared, with the prior's. */
  double criterion(double commonScale) {
    return prior.chi2(camera()) + Misfits.loss(misfits, commonScale);
  }

  /** Share of the numbers measured that the unknowns leave free. */
  private double freeShare() {
    SightingTable table = bundle.table;
    double measured = 2.0 * table.count();
    double unknown = 2.0 * table.tracks() + 3.0 * (table.frames() - 1) + 2;
    return Math.max(0.05, 1 - unknown / measured);
  }

  /** Huber's weights until all is settled, then Tukey's. */
  private void iterate(Optional<RateLine> sky) {
    boolean huber = sky.isEmpty();
    for (int round = 0; round < MOST_ROUNDS; round++) {
      scale = huber ? Math.min(scale(), LARGEST_FIRST_SCALE) : scale();
      weigh(huber);
      BundleNormal normal = new BundleNormal(bundle.table.frames(), bundle.reference);
      BundleNormal.Track[] tracks = bundle.fill(normal, weights);
      addPrior(normal);
      sky.ifPresent(line -> addRate(normal, line.errorShare));
      BundleNormal.Step step = normal.solve();
      double moved = bundle.move(step.step(), tracks, weights);
      misfits = bundle.misfits();
      double growth = Misfits.growth(misfits, scale, freeShare());
      Arrays.setAll(variances, i -> growth * step.covariance().getEntry(i, i));
      double together = growth * step.covariance().getEntry(0, 1);
      correlation = Math.max(-1, Math.min(1, together / (focalError() * k1Error())));
      boolean settled = moved < SETTLED_SHARE * Math.min(focalError(), k1Error());
      if (settled && !huber) {
        break;
      }
      huber = huber && !settled && round < HUBER_ROUNDS;
    }
    scale = scale();
  }

  private void weigh(boolean huber) {
    for (int i = 0; i < weights.length; i++) {
      double u = misfits[i] / scale;
      double weight = huber ? RobustWeights.huber(u) : RobustWeights.tukey(u);
      double error = bundle.table.errors[i] * scale;
      weights[i] = Double.isInfinite(u) ? 0 : weight / (error * error);
    }
  }

  private void addPrior(BundleNormal normal) {
    Camera nominal = prior.nominal();
    double logFocal = Math.log(nominal.focalLengthPx() / camera().focalLengthPx());
    normal.addRow(new double[] {1}, logFocal, prior.focalShare());
    normal.addRow(new double[] {0, 1}, nominal.k1() - camera().k1(), prior.k1Error());
  }

  /** d ln rate of the line through the attitudes against the sidereal one. */
  private void addRate(BundleNormal normal, double errorShare) {
    Optional<RateLine> line = rate();
    if (line.isEmpty()) {
      return;
    }
    Spin spin = line.get().spin;
    double square = spin.rateRadPerS() * spin.rateRadPerS();
    double[] row = new double[BundleNormal.column(bundle.table.frames())];
    for (int f = 0; f < bundle.table.frames(); f++) {
      double slope = line.get().slopePerFrame[f] / square;
      row[BundleNormal.column(f)] = slope * spin.xRadPerS();
      row[BundleNormal.column(f) + 1] = slope * spin.yRadPerS();
      row[BundleNormal.column(f) + 2] = slope * spin.zRadPerS();
    }
    normal.addRow(row, -Math.log(line.get().rateShare()), errorShare);
  }
}
