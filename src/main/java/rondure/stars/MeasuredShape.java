package rondure.stars;

/**
 * A candidate that has a shape.
 *
 * @param candidate what the finder saw
 * @param fit the model
 * @param profileIndex which model
 * @param noiseCounts pixel noise of the sky there
 * @param tails third moments
 */
record MeasuredShape(
    Candidate candidate, ShapeFit fit, int profileIndex, double noiseCounts, Tails tails) {}
