/**
 * What softened a frame: the shapes of its stars, shared out to causes.
 *
 * <p>In: the stars of one frame, what its exposure allows, what the sharpest frames of its scene
 * show. Out: a verdict: probabilities of the causes and the evidence as data. Steps: shapes to
 * field statistics; directions to a shared smear and what the sky can explain of it; repeated
 * offsets and the average star's tail to the camera's path; widths to excess over the core; excess
 * to probabilities. Where a scene is registered, tensors to a budget: the sky predicted, lens and
 * core shared by the frames, focus and shake of each. Knows nothing of: pixels, files, nights,
 * words.
 */
package rondure.blur;
