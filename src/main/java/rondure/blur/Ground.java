package rondure.blur;

/** What a verdict rests on, as far as the program itself can tell: each is sure in its measure. */
public enum Ground {
  /** A budget over five or more frames, exposures known. */
  SEQUENCE,
  /** A budget over fewer. */
  FEW_FRAMES,
  /** A budget over frames whose exposures nothing tells. */
  NO_EXPOSURES,
  /** What one frame shows, its exposure known. */
  LONE,
  /** What one frame shows, and no file tells how long it was exposed. */
  LONE_NO_EXPOSURE;

  private static final int SEQUENCE_FROM = 5;

  /**
   * @param framesWithBudget of the scene
   */
  static Ground ofBudget(FrameEvidence frame, long framesWithBudget) {
    if (frame.exposureSeconds().isEmpty()) {
      return NO_EXPOSURES;
    }
    return framesWithBudget >= SEQUENCE_FROM ? SEQUENCE : FEW_FRAMES;
  }

  static Ground ofOneFrame(FrameEvidence frame) {
    return frame.exposureSeconds().isPresent() ? LONE : LONE_NO_EXPOSURE;
  }
}
