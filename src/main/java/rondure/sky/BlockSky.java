package rondure.sky;

import java.util.List;
import java.util.Optional;

/**
 * What the attitudes of one block of frames tell of the sky's turning and the tripod's motion.
 *
 * <p>In axes that turn with the sky the sky's own spin -ω n is one vector for the whole night,
 * however often the camera was knocked, drooped or was aimed anew. The path of the camera is cut
 * into stretches of steady motion; the sky is the spin at the sidereal rate on which the longest
 * time of them agrees; what a stretch has besides is the tripod's.
 *
 * @param poses with times
 * @param byClock whether the times are the clock's
 * @param vote the sky
 * @param motions the camera's, one for each pose
 */
record BlockSky(
    List<Pose> poses, boolean byClock, SkyVote vote, List<BlockMotions.Motion> motions) {
  private static final int ROUNDS = 3;

  BlockSky {
    poses = List.copyOf(poses);
    motions = List.copyOf(motions);
  }

  /**
   * @param times of the block's frames
   * @param sight what they were seen with
   */
  static BlockSky of(SkyTimes times, Sight sight) {
    List<Pose> poses = times.poses();
    SkyVote vote = SkyVote.none(FirstRate.of(poses, sight));
    for (int round = 0; round < ROUNDS; round++) {
      List<AimPath> aims = AimPath.of(poses, vote.sky(), sight);
      Vec sky = vote.sky();
      vote = SkyVote.of(aims.stream().flatMap(a -> a.rates(sky).stream()).toList(), sight, sky);
    }
    if (vote.kind() == SkyVote.Kind.TURNS && sight.trust().scaleKnown()) {
      vote = provenCreep(poses, vote, sight);
    }
    List<AimPath> aims = AimPath.of(poses, vote.sky(), sight);
    return new BlockSky(poses, times.byClock(), vote, BlockMotions.of(aims, vote, sight));
  }

  private static SkyVote provenCreep(List<Pose> poses, SkyVote vote, Sight sight) {
    List<AimPath> aims = AimPath.of(poses, vote.sky(), sight);
    Optional<CreepFit> fit = CreepProof.of(aims, vote.sky(), sight);
    return fit.map(
            f ->
                new SkyVote(
                    SkyVote.Kind.TURNS, f.sky(), f.poleErrorRadPerS(), f.poleErrorRadPerS(), true))
        .orElse(vote);
  }

  SkyVote.Kind kind() {
    return vote.kind();
  }

  /** The sky's spin in the block's axes, rad/s; zero when it stays. */
  Vec sky() {
    return vote.sky();
  }

  /** The sky's spin at a pose, in the camera's axes; empty when it is not known. */
  Optional<Spin> skySpin(Pose pose) {
    return switch (kind()) {
      case TURNS -> Optional.of(sky().turned(pose.turn()).spin());
      case TRACKS -> Optional.of(Spin.NONE);
      case UNKNOWN -> Optional.empty();
    };
  }
}
