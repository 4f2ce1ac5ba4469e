package rondure.sky;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rondure.base.RobustStats;

/**
 * What the attitudes of one block of frames tell of the sky's turning and the tripod's motion.
 *
 * <p>In axes that turn with the sky the sky's own spin -ω n is one vector for the whole night,
 * however often the camera was knocked, drooped or was aimed anew. The path of the camera is cut
 * into stretches of steady motion; the sky is the spin at the sidereal rate on which the longest
 * time of them agrees; what a stretch has besides is the tripod's.
 */
final class BlockSky {
  private static final double LARGEST_TRACKED_SHARE = 0.5;

  /** The sky is in doubt where less of the time agrees on it. */
  private static final double LEAST_AGREEING_SHARE = 0.4;

  private static final double CREEP_SIGMAS = 4;
  private static final double AGREEING_CHI2 = 20;
  private static final double LEAST_CREEP_SHARE = 0.02;
  private static final double SIDEREAL_WITHIN = 0.05;
  private static final double LEAST_SIDEREAL_SHARE = 0.15;
  private static final int ROUNDS = 3;
  private static final int MEDIAN_ROUNDS = 60;

  /** A focal length wrong by 1 % moves a pole 45° off the axis by 0.197°: rad for a share. */
  private static final double POLE_RAD_PER_FOCAL_SHARE = 0.344;

  /** Rotation of the pole by a wrong focal length, for each share of rate it makes wrong. */
  private static final double POLE_RAD_PER_RATE_SHARE = 0.94;

  private static final double CREEP_ACROSS = 2;

  /** What kind of motion was found. */
  enum Kind {
    TURNS,
    TRACKS,
    /** Too little motion for what it was measured with. */
    UNKNOWN
  }

  /** The motion at one frame: what the stars do besides the sky, its error, a jump before it. */
  record Motion(Vec creep, double errorRadPerS, double jumpRad) {}

  private final List<Pose> poses;
  private final boolean byClock;
  private final double stepSeconds;
  private final double scaleError;
  private final boolean scaleKnown;
  private final double focalLengthPx;
  private Kind kind = Kind.UNKNOWN;
  private Vec sky;
  private double poleErrorRadPerS;
  private double statisticalErrorRadPerS;

  /** No stretch shows the sky alone: each goes by what its own stars did. */
  private boolean unsettled;

  private final List<Motion> motions = new ArrayList<>();

  /**
   * @param times of the block's frames
   * @param stepSeconds of the clock
   * @param camera as known
   * @param trust how far the camera is to be trusted
   */
  BlockSky(SkyTimes times, double stepSeconds, Camera camera, SkyStory.Trust trust) {
    this.poses = times.poses();
    this.byClock = times.byClock();
    this.stepSeconds = byClock ? stepSeconds : 1e-3;
    this.scaleError = trust.scaleError();
    this.scaleKnown = trust.scaleKnown();
    this.focalLengthPx = camera.focalLengthPx();
    this.sky = firstRate();
    for (int round = 0; round < ROUNDS; round++) {
      decide();
    }
    if (kind == Kind.TURNS && scaleKnown) {
      proveCreep();
    }
    tell();
  }

  Kind kind() {
    return kind;
  }

  boolean byClock() {
    return byClock;
  }

  List<Pose> poses() {
    return poses;
  }

  /** The sky's spin in the block's axes, rad/s; zero when it stays. */
  Vec sky() {
    return sky;
  }

  /** Standard error of that spin's direction, times its rate. */
  double poleErrorRadPerS() {
    return poleErrorRadPerS;
  }

  List<Motion> motions() {
    return List.copyOf(motions);
  }

  /** Seconds the block spans. */
  double seconds() {
    return poses.get(poses.size() - 1).seconds() - poses.get(0).seconds();
  }

  /**
   * Geometric median of the rates over windows of the block (Weiszfeld's iteration), of those alone
   * that turn at the sky's rate where a fair share does: knocks in most gaps leave few such.
   */
  private Vec firstRate() {
    int lag = poses.size() < 12 ? 1 : poses.size() / 10;
    List<Vec> rates = new ArrayList<>();
    for (int i = 0; i + lag < poses.size(); i++) {
      double seconds = poses.get(i + lag).seconds() - poses.get(i).seconds();
      if (seconds > 0) {
        rates.add(poses.get(i).turnTo(poses.get(i + lag)).times(1 / seconds));
      }
    }
    List<Vec> sidereal = rates.stream().filter(BlockSky::isSidereal).toList();
    return scaleKnown && byClock && sidereal.size() >= LEAST_SIDEREAL_SHARE * rates.size()
        ? middle(sidereal)
        : middle(rates);
  }

  private static boolean isSidereal(Vec rate) {
    double share = rate.length() / SkyMotion.SIDEREAL_RATE_RAD_PER_S;
    return Math.abs(share - 1) < SIDEREAL_WITHIN;
  }

  private static Vec middle(List<Vec> rates) {
    Vec middle =
        new Vec(
            RobustStats.median(rates.stream().mapToDouble(Vec::x).toArray()),
            RobustStats.median(rates.stream().mapToDouble(Vec::y).toArray()),
            RobustStats.median(rates.stream().mapToDouble(Vec::z).toArray()));
    for (int round = 0; round < MEDIAN_ROUNDS && !rates.isEmpty(); round++) {
      Vec sum = Vec.ZERO;
      double weights = 0;
      for (Vec rate : rates) {
        double weight = 1 / Math.max(1e-9, rate.minus(middle).length());
        sum = sum.plus(rate.times(weight));
        weights += weight;
      }
      middle = sum.times(1 / weights);
    }
    return rates.isEmpty() ? Vec.ZERO : middle;
  }

  private List<PieceRate> rates() {
    return aims().stream().flatMap(aim -> aim.rates(sky).stream()).toList();
  }

  private List<AimPath> aims() {
    return AimPath.of(poses, sky, stepSeconds, focalLengthPx);
  }

  private void decide() {
    List<PieceRate> rates = rates();
    double omega = SkyMotion.SIDEREAL_RATE_RAD_PER_S;
    double all = rates.stream().mapToDouble(PieceRate::seconds).sum();
    double slow =
        rates.stream()
            .filter(r -> r.rate().length() < LARGEST_TRACKED_SHARE * omega)
            .mapToDouble(PieceRate::seconds)
            .sum();
    if (rates.isEmpty()) {
      kind = Kind.UNKNOWN;
      return;
    }
    PieceRate longest = rates.stream().max(Comparator.comparingDouble(PieceRate::seconds)).get();
    if (slow > all / 2 && (scaleKnown || !byClock)) {
      boolean sure = longest.rmsError() < 0.15 * omega;
      kind = sure ? Kind.TRACKS : Kind.UNKNOWN;
      sky = Vec.ZERO;
      return;
    }
    kind = Kind.TURNS;
    if (!scaleKnown) {
      sky = longest.rate();
      poleErrorRadPerS = byClock ? longest.rmsError() * Math.sqrt(3) : omega;
      statisticalErrorRadPerS = poleErrorRadPerS;
      unsettled = true;
      return;
    }
    PieceRate best = best(rates);
    List<PieceRate> agreeing =
        rates.stream().filter(r -> agrees(r, onSphere(best.rate()))).toList();
    PoleFit fit = PoleFit.of(agreeing.isEmpty() ? List.of(best) : agreeing, scaleError);
    double off = Math.abs(best.rate().length() / omega - 1);
    double unexplained = Math.max(0, off - 2 * best.rmsError() / omega);
    sky = fit.spin();
    statisticalErrorRadPerS = fit.errorRadPerS();
    unsettled = !agree(agreeing, all);
    // Beyond what a wrong scale may do it is a creep, as likely across the sky's motion as along.
    double factor = unexplained > 2 * scaleError ? CREEP_ACROSS : POLE_RAD_PER_RATE_SHARE;
    double bend = Math.hypot(factor * unexplained, POLE_RAD_PER_FOCAL_SHARE * bentShare(best));
    poleErrorRadPerS = Math.hypot(fit.errorRadPerS(), bend * omega);
    if (unsettled) {
      poleErrorRadPerS = Math.hypot(poleErrorRadPerS, scatter(rates));
    }
  }

  /** Whether stretches make up enough of the time. */
  private static boolean agree(List<PieceRate> agreeing, double allSeconds) {
    double seconds = agreeing.stream().mapToDouble(PieceRate::seconds).sum();
    return seconds >= LEAST_AGREEING_SHARE * allSeconds;
  }

  /** R.m.s. difference of the stretches' rates from the sky's over their time. */
  private double scatter(List<PieceRate> rates) {
    double sum = 0;
    double seconds = 0;
    for (PieceRate rate : rates) {
      double off = rate.rate().minus(sky).length();
      sum += rate.seconds() * off * off;
      seconds += rate.seconds();
    }
    return Math.sqrt(sum / seconds);
  }

  /**
   * What a wrong focal length does to the pole, over its greatest effect: none when the pole is on
   * the axis or across it.
   */
  private double bentShare(PieceRate rate) {
    Vec axis = rate.rate().withLength(1).turned(rate.turn());
    double across = Math.sqrt(Math.max(0, 1 - axis.z() * axis.z()));
    return scaleError * 2 * Math.abs(axis.z()) * across;
  }

  /** Looks whether the longest run without a jump shows the sky through a steady creep. */
  private void proveCreep() {
    AimPath longest = null;
    int from = 0;
    int until = 0;
    for (AimPath aim : aims()) {
      int start = 0;
      for (int p = 0; p < aim.pieces.size(); p++) {
        PathPieces.Piece piece = aim.pieces.get(p);
        if (p > 0 && aim.jump(aim.pieces.get(p - 1), piece) > 0) {
          start = piece.from();
        }
        if (piece.until() - start > until - from) {
          longest = aim;
          from = start;
          until = piece.until();
        }
      }
    }
    if (longest != null) {
      double least = Math.max(LEAST_CREEP_SHARE, scaleError) * SkyMotion.SIDEREAL_RATE_RAD_PER_S;
      Optional<CreepFit> fit =
          CreepFit.of(longest.poses.subList(from, until), longest.noise, sky, least);
      fit.ifPresent(
          f -> {
            sky = f.sky();
            poleErrorRadPerS = f.poleErrorRadPerS();
            statisticalErrorRadPerS = poleErrorRadPerS;
            unsettled = false;
          });
    }
  }

  private static Vec onSphere(Vec rate) {
    return rate.withLength(SkyMotion.SIDEREAL_RATE_RAD_PER_S);
  }

  private boolean agrees(PieceRate rate, Vec spin) {
    double extra = scaleError * SkyMotion.SIDEREAL_RATE_RAD_PER_S;
    return rate.chi2(spin, extra) < AGREEING_CHI2;
  }

  /** The stretch with whose sky the longest time agrees. */
  private PieceRate best(List<PieceRate> rates) {
    PieceRate best = null;
    double most = -1;
    for (PieceRate candidate : rates) {
      Vec spin = onSphere(candidate.rate());
      double time =
          rates.stream().filter(r -> agrees(r, spin)).mapToDouble(PieceRate::seconds).sum();
      double score = time + 1e-3 * candidate.seconds();
      if (score > most) {
        best = candidate;
        most = score;
      }
    }
    return best;
  }

  private void tell() {
    List<AimPath> aims = aims();
    Pose before = null;
    for (AimPath aim : aims) {
      List<PieceRate> rates = aim.rates(sky);
      for (int p = 0; p < aim.pieces.size(); p++) {
        PathPieces.Piece piece = aim.pieces.get(p);
        Optional<PieceRate> rate = rates.stream().filter(r -> r.piece().equals(piece)).findFirst();
        double jump = p > 0 ? aim.jump(aim.pieces.get(p - 1), piece) : aimStep(before, aim);
        for (int i = piece.from(); i < piece.until(); i++) {
          motions.add(motion(rate, i == piece.from() ? jump : 0));
        }
      }
      before = aim.poses.get(aim.poses.size() - 1);
    }
  }

  private double aimStep(Pose before, AimPath aim) {
    if (before == null) {
      return 0;
    }
    double start = poses.get(0).seconds();
    Rotation from = before.withoutSky(sky, start);
    return from.inverse().then(aim.poses.get(0).withoutSky(sky, start)).angleRad();
  }

  private Motion motion(Optional<PieceRate> rate, double jump) {
    if (rate.isEmpty()) {
      return new Motion(Vec.ZERO, fallbackError(), jump);
    }
    PieceRate r = rate.get();
    double poleError = poleErrorRadPerS / Math.sqrt(3);
    double least = LEAST_CREEP_SHARE / 4 * SkyMotion.SIDEREAL_RATE_RAD_PER_S;
    Vec creep = r.rate().minus(sky);
    boolean proven =
        r.chi2(sky, kind == Kind.TURNS ? directionError() : 0) > CREEP_SIGMAS * CREEP_SIGMAS
            && creep.length() > least;
    boolean creeps = proven || (unsettled && kind == Kind.TURNS && byClock);
    if (!creeps) {
      double error = kind == Kind.TURNS ? poleError : r.rmsError();
      return new Motion(Vec.ZERO, error, jump);
    }
    return new Motion(creep.turned(r.turn()), r.rmsError(), jump);
  }

  /** Error of the sky's spin from the frames alone, without what a wrong scale may do. */
  private double directionError() {
    return statisticalErrorRadPerS / Math.sqrt(3);
  }

  private double fallbackError() {
    return kind == Kind.TURNS ? poleErrorRadPerS / Math.sqrt(3) : 0;
  }
}
