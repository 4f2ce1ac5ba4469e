/**
 * The drawings of the report, as vectors on a {@link java.awt.Graphics2D}.
 *
 * <p>In: one frame or one night. Out: strokes, shapes and words in CSS pixels (1/96 inch). Steps:
 * map stored to display coordinates, choose a scale, draw, label directly. Knows nothing of: pages,
 * templates, PDF.
 */
package rondure.report.picture;
