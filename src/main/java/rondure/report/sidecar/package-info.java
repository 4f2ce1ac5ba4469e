/**
 * XMP sidecars: the night's grades as ratings and keywords that photo managers read.
 *
 * <p>In: a {@link rondure.night.NightBook}, the pictures' files, and sidecars that are there
 * already. Out: sidecars in the output folder or next to the pictures, and what became of each.
 * Steps: say what a frame's marks are, find its sidecars by name, read them with suspicion, merge,
 * check that nothing else changed, write whole files and keep one backup. Knows nothing of: what is
 * in the pictures, which are never opened; pages; how grades come about.
 */
package rondure.report.sidecar;
