package rondure.blur;

import java.util.Optional;

/**
 * Whose a common smear is: the sky's or the tripod's.
 *
 * @param trailing probability of the sky, given that it is one of the two
 * @param sizeFits whether the exposure allows a trail of this length, when that is known
 * @param patternLogOdds for the sky, from the directions over the field
 * @param overOthers smear over that of the scene's other frames at this exposure, when comparable
 * @param likeOthers the other frames are stretched alike
 * @param moreThanOthers this frame is stretched clearly more
 * @param comparedFrames frames compared
 * @param ground what lamps on the ground tell, where there are any
 * @param along how the light lies along the smear, where noise lets it be told
 */
record SmearOwner(
    double trailing,
    Optional<Boolean> sizeFits,
    double patternLogOdds,
    Optional<Double> overOthers,
    boolean likeOthers,
    boolean moreThanOthers,
    int comparedFrames,
    Optional<GroundSmear> ground,
    Optional<SmearKurtosis.Compared> along) {

  /** Lengths are good to 5 %, exposure times to 7 %: up to 5 % more is no surprise, 25 % is. */
  private static final double FITS_UP_TO = 1.05;

  private static final double TOO_LONG_FROM = 1.25;

  /** Only where exposures are known: a longer one stretches more. */
  private static final double MORE_THAN_OTHERS_LOG_ODDS = -3;

  /** A trail is one even line: light beyond it was not brought there by the sky. */
  private static final double TAIL_LOG_ODDS = -2.5;

  private static final double LIKE_OTHERS_LOG_ODDS = 2.2;
  private static final double MORE_FROM_RATIO = 2;
  private static final double STEADY_FROM_SHARE = 0.6;

  static SmearOwner of(
      FrameEvidence evidence, FieldShape shape, DirectionReading direction, boolean tail) {
    Optional<Double> ratio = direction.smearRatio();
    double sizeAndPattern =
        direction.poles().map(PoleOdds::skyLogOdds).orElse(direction.skyLogOdds());
    Optional<SceneReference.CommonSmear> scene = evidence.scene().smear();
    Optional<Double> over = scene.flatMap(smear -> over(smear, evidence, shape));
    boolean more = over.isPresent() && over.get() > MORE_FROM_RATIO && surely(shape, over.get());
    boolean possible = ratio.map(r -> r > 0.2 && r < FITS_UP_TO + 0.1).orElse(true);
    boolean like =
        possible
            && over.isPresent()
            && over.get() > 0.6
            && over.get() < 1.6
            && scene.orElseThrow().steadyShare() >= STEADY_FROM_SHARE;
    Optional<GroundSmear> ground = GroundSmear.of(evidence.field(), false);
    Optional<SmearKurtosis.Compared> along = SmearKurtosis.of(evidence.field(), shape);
    double logOdds =
        sizeAndPattern
            + ground.map(GroundSmear::skyLogOdds).orElse(0.0)
            + along.map(SmearKurtosis.Compared::skyLogOdds).orElse(0.0)
            + (tail ? TAIL_LOG_ODDS : 0)
            + (more && scene.orElseThrow().exposuresKnown() ? MORE_THAN_OTHERS_LOG_ODDS : 0)
            + (like ? LIKE_OTHERS_LOG_ODDS : 0);
    return new SmearOwner(
        Excess.logistic(logOdds),
        ratio.map(r -> r < (FITS_UP_TO + TOO_LONG_FROM) / 2),
        direction.skyLogOdds(),
        over,
        like,
        more,
        scene.map(SceneReference.CommonSmear::frames).orElse(0),
        ground,
        along);
  }

  /** Empty where the others tell their exposure and this frame does not: it may be longer. */
  private static Optional<Double> over(
      SceneReference.CommonSmear scene, FrameEvidence evidence, FieldShape shape) {
    if (scene.exposuresKnown() && evidence.exposureSeconds().isEmpty()) {
      return Optional.empty();
    }
    double usual = scene.perSquareSecondPx2() * SceneReference.square(evidence.exposureSeconds());
    return Optional.of(shape.moments().spin2Px2() / Math.max(1e-6, usual));
  }

  /** The surplus over the others is beyond noise and large enough to see. */
  private static boolean surely(FieldShape shape, double overOthers) {
    double surplus = shape.moments().spin2Px2() * (1 - 1 / overOthers);
    return surplus > 0.1 && surplus > 4.5 * shape.smearErrorPx2();
  }
}
