package rondure.blur;

import rondure.stars.SkyState;

/** Frames whose sky is cut off at black: with it goes the faint light of haze, wings and stars. */
final class BlackSky {
  /** Share of the sky's pixels at the lowest value from which its noise is not whole any more. */
  private static final double CLIPPED_SHARE = 0.3;

  /** Sky at sRGB code 1.5 of 255, in linear light: 1.5 / 255 / 12.92 (IEC 61966-2-1). */
  private static final double CODE_ONE = 1.5 / 255 / 12.92;

  private BlackSky() {}

  static boolean is(FrameEvidence frame) {
    SkyState sky = frame.field().sky();
    return sky.clippedShare() > CLIPPED_SHARE
        || frame.developed() && sky.levelFraction() < CODE_ONE;
  }
}
