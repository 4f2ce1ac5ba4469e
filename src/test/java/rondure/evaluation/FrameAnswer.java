package rondure.evaluation;

import java.util.List;
import java.util.stream.DoubleStream;
import rondure.base.RobustStats;
import rondure.blur.Cause;
import rondure.sim.CauseShares;
import rondure.sim.FrameTruth;
import rondure.sim.StarTruth;

/**
 * What is true of a frame, as far as verdicts are scored by it.
 *
 * @param number from 1
 * @param cause what mainly softened it
 * @param sky what each cause adds, median over the sky, px²
 * @param edge the same in the outer fifth
 * @param transparency share of the light that is left in the star itself, not in a halo
 * @param trailPx median over the stars
 * @param stars of SNR of at least 20
 */
record FrameAnswer(
    int number,
    Cause cause,
    CauseShares sky,
    CauseShares edge,
    double transparency,
    double trailPx,
    int stars) {

  private static final double NAMED_FROM_WIDENING = 1.25;
  private static final double CLEAR_SHARE = 0.6;
  private static final double GOOD_SNR = 20;

  /** How clear the truth is. */
  enum Kind {
    /** Nothing to name. */
    SHARP,
    /** Wider by a quarter, and one cause has 60 % of it. */
    CLEAR,
    /** Wider by a quarter by several causes. */
    MIXED,
    /** A loss of light without width. */
    DIM,
    /** Soft in the outer fifth alone. */
    EDGE
  }

  static FrameAnswer of(FrameTruth truth) {
    List<StarTruth> good = truth.stars().stream().filter(s -> s.snr() >= GOOD_SNR).toList();
    double[] trails = truth.stars().stream().mapToDouble(StarTruth::trailPx).toArray();
    return new FrameAnswer(
        truth.number(),
        Cause.valueOf(truth.cause().name()),
        truth.sharesPx2(),
        truth.edgeSharesPx2(),
        truth.transparency(),
        trails.length == 0 ? 0 : RobustStats.median(trails),
        good.size());
  }

  double share(Cause cause) {
    return switch (cause) {
      case NONE -> 0;
      case FOCUS -> sky.focus();
      case TRAILING -> sky.trailing();
      case TRIPOD -> sky.tripod();
      case LENS -> sky.lens();
      case HAZE -> sky.haze();
    };
  }

  double excess() {
    return sky.focus() + sky.trailing() + sky.tripod() + sky.lens() + sky.haze();
  }

  double widening() {
    return Math.sqrt(Math.max(0, sky.core() + excess()) / sky.core());
  }

  /** Share of the named cause in the excess. */
  double leadingShare() {
    return cause == Cause.NONE ? 0 : share(cause) / excess();
  }

  Kind kind() {
    if (cause == Cause.NONE) {
      return Kind.SHARP;
    }
    if (widening() < NAMED_FROM_WIDENING) {
      return cause == Cause.HAZE ? Kind.DIM : Kind.EDGE;
    }
    return leadingShare() >= CLEAR_SHARE ? Kind.CLEAR : Kind.MIXED;
  }

  double focusDiscPx() {
    return 4 * Math.sqrt(Math.max(0, sky.focus()));
  }

  double tripodRmsPx() {
    return Math.sqrt(Math.max(0, 2 * sky.tripod()));
  }

  /** The largest of the shares. */
  double largest() {
    return DoubleStream.of(sky.focus(), sky.trailing(), sky.tripod(), sky.lens(), sky.haze())
        .max()
        .orElse(0);
  }
}
