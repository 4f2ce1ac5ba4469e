/**
 * Finds the stars of one frame and measures their shapes.
 *
 * <p>In: a plane of linear pixels, its white level and code steps. Out: sky level and noise, the
 * sky region, sources with rough measures, and from them the stars with shapes. Steps: background
 * on a mesh ({@code BackgroundMesh}); significance at doubling widths ({@code ScaleSpace});
 * connected footprints ({@code FootprintRuns}); distinct peaks ({@code PeakBasins}); rough measures
 * ({@code SourceMeter}); sky region without ground and objects ({@code SkyRegion}, {@code
 * Texture}); reasons against a source ({@code StarFinder}); shapes of what is left ({@code
 * StarShaper}). Knows nothing of: files, exposures, other frames, causes.
 */
package rondure.stars;
