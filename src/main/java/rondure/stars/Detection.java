package rondure.stars;

/**
 * A detection without a shape.
 *
 * @param xPx position, centre of the first pixel at 0
 * @param yPx position
 * @param fluxCounts rough light above sky, counts
 * @param reason why no shape was measured
 */
public record Detection(double xPx, double yPx, double fluxCounts, Refusal reason) {}
