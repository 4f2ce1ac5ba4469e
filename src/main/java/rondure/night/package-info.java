/**
 * The night as a whole: frames in order, scenes, what became of each frame and what to do with it.
 *
 * <p>In: measured exposures, counts of other files, settings. Out: one {@link
 * rondure.night.NightBook}. Steps: name the cameras; order by time; set aside what is not the
 * night; split into nights and scenes; take out what stays on the sensor; sum up the stars of each
 * frame; judge and grade against the scene; add remarks. Knows nothing of: pixels, file formats,
 * pages.
 */
package rondure.night;
