package rondure.blur;

/**
 * A stretch that all stars of a frame share besides the sky's: defocus makes none, and a lens the
 * same in all frames.
 *
 * @param spin2Px2 half the difference of the second moments along and across it, at the centre
 * @param errorPx2 standard error
 * @param angleRad direction, from +x towards +y, in [0, π)
 * @param proven clearly there, and enough to matter: the tripod moved
 */
public record UniformSmear(double spin2Px2, double errorPx2, double angleRad, boolean proven) {}
