package rondure.sky;

import java.util.Arrays;
import java.util.Optional;
import rondure.base.RobustStats;
import rondure.base.RobustWeights;

/**
 * The steady spin that frames' attitudes show over their times: a robust straight line through the
 * rotation vectors, stepping where the camera was knocked or its head sagged for a while.
 *
 * <p>Its error holds the misfits, the step of the clock, the difference of both halves, and an
 * allowance for tripods that creep steadily.
 */
final class RateLine {

  /** A tripod may turn steadily by this share of the sky's rate without anybody seeing it. */
  private static final double CREEP_SHARE = 0.005;

  private static final double LEAST_SPAN_SECONDS = 30;
  private static final int ROUNDS = 5;
  private static final int LEAST_FOR_HALVES = 6;

  /** Slope of the line by a frame's rotation vector, 1/s; 0 for frames that do not count. */
  final double[] slopePerFrame;

  final Spin spin;

  /** Standard error of the rate, as a share of it. */
  final double errorShare;

  private RateLine(double[] slopePerFrame, Spin spin, double errorShare) {
    this.slopePerFrame = slopePerFrame;
    this.spin = spin;
    this.errorShare = errorShare;
  }

  double rateShare() {
    return spin.rateRadPerS() / SkyMotion.SIDEREAL_RATE_RAD_PER_S;
  }

  /**
   * @param attitudes of the frames against one of them; null where not known
   * @param seconds when they were taken; NaN where not known
   * @return empty with less than two times or less than 30 s between them, or where the frames that
   *     agree with a line are all of one time
   */
  static Optional<RateLine> of(Rotation[] attitudes, double[] seconds, double stepSeconds) {
    double[] times = seconds.clone();
    for (int i = 0; i < times.length; i++) {
      times[i] = attitudes[i] == null ? Double.NaN : times[i];
    }
    double[] known = Arrays.stream(times).filter(t -> !Double.isNaN(t)).toArray();
    double span = Arrays.stream(known).max().orElse(0) - Arrays.stream(known).min().orElse(0);
    if (known.length < 2 || span < LEAST_SPAN_SECONDS) {
      return Optional.empty();
    }
    double[][] turns = new double[attitudes.length][3];
    for (int i = 0; i < turns.length; i++) {
      if (attitudes[i] != null) {
        Spin turn = attitudes[i].perSecond();
        turns[i] = new double[] {turn.xRadPerS(), turn.yRadPerS(), turn.zRadPerS()};
      }
    }
    int[] stretches = TurnStretches.of(turns, times, stepSeconds);
    RateLine line = through(new TurnLines(turns, times, stretches), times, span, stepSeconds);
    return Optional.of(line).filter(found -> found.spin.rateRadPerS() > 0);
  }

  private static RateLine through(
      TurnLines lines, double[] times, double span, double stepSeconds) {
    double[] slope = lines.medianSlope(span / 4);
    double[] weights = new double[times.length];
    Arrays.setAll(weights, i -> Double.isNaN(times[i]) ? 0 : 1);
    double clock = stepSeconds / Math.sqrt(12);
    double scale = 0;
    double[] perFrame = lines.perFrame(weights);
    for (int round = 0; round < ROUNDS; round++) {
      double[] misfits = lines.misfitSeconds(slope);
      scale = Math.max(clock, RobustStats.madSigma(misfits));
      for (int i = 0; i < weights.length; i++) {
        weights[i] = Double.isNaN(misfits[i]) ? 0 : RobustWeights.tukey(misfits[i] / scale);
      }
      if (Arrays.stream(weights).filter(w -> w > 0).count() < 2) {
        break;
      }
      perFrame = lines.perFrame(weights);
      slope = lines.slope(perFrame);
    }
    double power = 0;
    for (double one : perFrame) {
      power += one * one;
    }
    double bent = bentShare(lines, times, weights, slope, scale);
    double error = Math.sqrt(scale * scale * power + bent * bent + CREEP_SHARE * CREEP_SHARE);
    return new RateLine(perFrame, new Spin(slope[0], slope[1], slope[2]), error);
  }

  /** Half the difference between both halves' rates beyond what the misfits explain, as share. */
  private static double bentShare(
      TurnLines lines, double[] times, double[] weights, double[] slope, double scale) {
    double[] counted = new double[times.length];
    Arrays.setAll(counted, i -> weights[i] > 0 ? times[i] : Double.NaN);
    double middle = RobustStats.median(counted);
    double[][] halves = {weights.clone(), weights.clone()};
    int used = 0;
    for (int i = 0; i < times.length; i++) {
      used += weights[i] > 0 ? 1 : 0;
      halves[0][i] = times[i] <= middle ? weights[i] : 0;
      halves[1][i] = times[i] >= middle ? weights[i] : 0;
    }
    if (used < LEAST_FOR_HALVES) {
      return 0;
    }
    double[] ahead = lines.misfitSeconds(slope);
    double difference = 0;
    double noise = 0;
    for (int half = 0; half < 2; half++) {
      double[] perFrame = lines.perFrame(halves[half]);
      for (int i = 0; i < times.length; i++) {
        if (perFrame[i] != 0) {
          difference += (half == 0 ? -1 : 1) * perFrame[i] * ahead[i];
          noise += perFrame[i] * perFrame[i] * scale * scale;
        }
      }
    }
    return Math.sqrt(Math.max(0, difference * difference - noise)) / 2;
  }
}
