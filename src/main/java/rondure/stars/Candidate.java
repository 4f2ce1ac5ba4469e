package rondure.stars;

import java.util.Optional;
import rondure.base.Moments;

/**
 * What the finder hands to the shape meter: one connected source above the detection threshold.
 *
 * @param xPx rough centroid
 * @param yPx rough centroid
 * @param peakXPx column of the highest pixel
 * @param peakYPx row of the highest pixel
 * @param peakCounts highest pixel above sky
 * @param fluxCounts light above sky inside the isophote, over all pixels: photosites of other
 *     colours count with the mean of those measured
 * @param filterSnr signal-to-noise in the matched filter
 * @param isophotal second moments inside the isophote: rough, biased low, for choosing windows
 * @param refusal a reason known already at finding, else empty
 */
public record Candidate(
    double xPx,
    double yPx,
    int peakXPx,
    int peakYPx,
    double peakCounts,
    double fluxCounts,
    double filterSnr,
    Moments isophotal,
    Optional<Refusal> refusal) {}
