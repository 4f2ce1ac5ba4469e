package rondure.sky;

import java.util.List;
import java.util.Optional;

/** Looks whether the longest run without a jump shows the sky through a steady creep. */
final class CreepProof {
  /** Creeps below this share of the sky's rate are not told from an imperfect camera. */
  static final double LEAST_SHARE = 0.02;

  private AimPath longest;
  private int from;
  private int until;

  private CreepProof(List<AimPath> aims) {
    aims.forEach(this::search);
  }

  /**
   * @param aims the block's path, cut at new aims
   * @param sky a guess of the sky's spin in its own axes
   */
  static Optional<CreepFit> of(List<AimPath> aims, Vec sky, Sight sight) {
    CreepProof proof = new CreepProof(aims);
    if (proof.longest == null) {
      return Optional.empty();
    }
    List<Pose> poses = proof.longest.poses.subList(proof.from, proof.until);
    return CreepFit.of(poses, proof.longest.noise, sky, sight);
  }

  private void search(AimPath aim) {
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
}
