package rondure.stars;

/**
 * The sky background of one frame.
 *
 * @param levelCounts median background over the sky region, counts above black
 * @param noiseCounts median pixel noise (1 σ) over the sky region
 * @param levelFraction levelCounts over the white level
 * @param skyShare share of the frame that is sky, 0 to 1
 * @param clippedShare share of the sky's pixels at the lowest value (clipped to black), 0 to 1
 */
public record SkyState(
    double levelCounts,
    double noiseCounts,
    double levelFraction,
    double skyShare,
    double clippedShare) {}
