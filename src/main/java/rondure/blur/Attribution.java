package rondure.blur;

/** Judges what softened a frame. A pure function: same evidence, same verdict. */
public interface Attribution {

  /** The verdict on one frame. */
  Verdict judge(FrameEvidence evidence);
}
