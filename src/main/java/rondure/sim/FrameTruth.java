package rondure.sim;

import java.util.List;

/**
 * The truth about one frame.
 *
 * @param file name of the frame, empty until it is written
 * @param number from 1
 * @param startSeconds since the first exposure began
 * @param nominalSeconds exposure that the camera names
 * @param openSeconds time the shutter was open
 * @param focusMicrons focus error on the axis
 * @param cause what mainly softened it
 * @param events that touch it, by kind
 * @param transparency share of the stars' light that cloud and dew let through and no halo holds:
 *     what is left in the star itself, median
 * @param sharesPx2 of each cause, median over the sky
 * @param edgeSharesPx2 the same in the outer fifth of the stars
 * @param poleX north celestial pole in camera axes (right), unit vector, at mid-exposure
 * @param poleY down
 * @param poleZ forward
 * @param stars in the sky part of the frame with SNR of at least 5
 * @param lights lamps in the frame
 */
public record FrameTruth(
    String file,
    int number,
    double startSeconds,
    double nominalSeconds,
    double openSeconds,
    double focusMicrons,
    TrueCause cause,
    List<String> events,
    double transparency,
    CauseShares sharesPx2,
    CauseShares edgeSharesPx2,
    double poleX,
    double poleY,
    double poleZ,
    List<StarTruth> stars,
    List<StarTruth> lights) {

  public FrameTruth {
    events = List.copyOf(events);
    stars = List.copyOf(stars);
    lights = List.copyOf(lights);
  }

  FrameTruth named(String name) {
    return new FrameTruth(
        name,
        number,
        startSeconds,
        nominalSeconds,
        openSeconds,
        focusMicrons,
        cause,
        events,
        transparency,
        sharesPx2,
        edgeSharesPx2,
        poleX,
        poleY,
        poleZ,
        stars,
        lights);
  }
}
