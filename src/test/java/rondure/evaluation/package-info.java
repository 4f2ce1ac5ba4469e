/**
 * Whole simulated nights, judged and scored.
 *
 * <p>Seeded plans ({@link rondure.evaluation.NightDraw}) are rendered to files, measured as the
 * program measures files, kept on disk, and judged in several views: the whole night, threes, lone
 * frames, without EXIF.
 */
package rondure.evaluation;
