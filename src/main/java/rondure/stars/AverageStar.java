package rondure.stars;

import rondure.base.Stamp;

/**
 * Average of many stars, each centred on its centroid and scaled to unit flux before averaging.
 *
 * @param zone where in the frame: by distance from the centre over half the diagonal
 * @param starCount stars averaged
 * @param samplesPerPx oversampling of the stamp: a pixel of the frame is this many stamp pixels
 *     wide
 * @param stamp the picture, centre of the middle stamp pixel = centroid (odd side), stored
 *     orientation, peak scaled to 1
 */
public record AverageStar(Zone zone, int starCount, int samplesPerPx, Stamp stamp) {

  /** Part of the frame. */
  public enum Zone {
    WHOLE,
    /** Inside 0.4 of the half diagonal. */
    CENTRE,
    /** 0.4 to 0.75. */
    MIDWAY,
    /** Beyond 0.75. */
    EDGE
  }
}
