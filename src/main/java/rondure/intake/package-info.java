/**
 * From a folder to linear pixels and facts.
 *
 * <p>In: files and folders. Out: the exposures found, {@link rondure.intake.ShotFacts} and {@link
 * rondure.intake.DecodedFrame} for each. Steps: scan, read facts, group copies, decode. Knows
 * nothing of: stars, causes, reports.
 */
package rondure.intake;
