package rondure.stars;

import rondure.base.Moments;

/**
 * A source as measured at finding, before it is known what speaks against it.
 *
 * @param xPx centroid inside the isophote
 * @param yPx centroid inside the isophote
 * @param peakXPx column of the highest pixel
 * @param peakYPx row of the highest pixel
 * @param peakCounts highest pixel above sky
 * @param peakValueCounts the same pixel as stored, sky included
 * @param plateauPx pixels within half a percent of the highest
 * @param fluxCounts light above sky inside the isophote, holes filled with the mean
 * @param filterSnr matched-filter signal-to-noise
 * @param scale the finest scale that gives at least {@link SourceMeter#SCALE_SHARE} of that
 * @param moments second moments inside the isophote
 * @param touchesEdge true when the isophote reaches the border
 * @param spread how the light spreads around the highest pixel
 */
record Source(
    double xPx,
    double yPx,
    int peakXPx,
    int peakYPx,
    double peakCounts,
    double peakValueCounts,
    int plateauPx,
    double fluxCounts,
    double filterSnr,
    int scale,
    Moments moments,
    boolean touchesEdge,
    PeakSpread spread) {}
