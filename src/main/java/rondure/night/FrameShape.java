package rondure.night;

import java.util.Optional;
import rondure.base.Moments;

/**
 * One frame's stars in a few numbers: medians over its measured sky stars, static ones left out.
 *
 * @param starCount measured stars
 * @param fwhmPx half-maximum width √(major · minor) of the fitted star model
 * @param fwhmArcsec the same on the sky at the centre's plate scale, when that is known
 * @param rmsWidthPx √((Mxx + Myy)/2)
 * @param roundness b/a, 1 = round: half-maximum axis ratio typical of the stars, minor/major; what
 *     differs between neighbouring stars (noise, sampling) is taken off
 * @param moments median tensor over the stars, stored coordinates, px²
 * @param elongationAngleDeg direction of the median tensor's major axis as displayed: 0 to 180, 0 =
 *     to the right, clockwise
 * @param directionCoherence 0 = stars point every way, 1 = all the same way
 * @param fwhmCentrePx median inside 0.4 of the half diagonal, when it holds at least 5 stars
 * @param fwhmEdgePx median beyond 0.75 of the half diagonal, when it holds at least 5 stars
 * @param skyBackground sky level as a fraction of the white level
 */
public record FrameShape(
    int starCount,
    double fwhmPx,
    Optional<Double> fwhmArcsec,
    double rmsWidthPx,
    double roundness,
    Moments moments,
    double elongationAngleDeg,
    double directionCoherence,
    Optional<Double> fwhmCentrePx,
    Optional<Double> fwhmEdgePx,
    double skyBackground) {}
