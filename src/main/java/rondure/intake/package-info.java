/**
 * From a folder to linear pixels and facts.
 *
 * <p>In: files and folders. Out: the exposures found, {@link rondure.intake.ShotFacts} and {@link
 * rondure.intake.DecodedFrame} for each. Steps: scan, read facts, group copies, decode ({@link
 * rondure.intake.FrameDecoder} tells the kind by content and hands on to a decoder per kind; RAW
 * goes through LibRaw when {@link rondure.intake.RawSupport} finds it). Knows nothing of: stars,
 * causes, reports.
 */
package rondure.intake;
