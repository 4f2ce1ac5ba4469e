/**
 * The night simulator: renders frames from physical parameters, with known truth.
 *
 * <p>In: a {@link rondure.sim.NightPlan} (a JSON recipe). Out: frames as 16-bit TIFF, JPEG or Bayer
 * DNG with EXIF, and {@code truth.json} beside them. Steps: lay out the exposures; for each, turn
 * the sky and move the camera in small time steps; paint the light of every star along its path;
 * add sky, foreground and lights; expose the sensor; write the file and the truth. Knows nothing
 * of: how stars are measured, how causes are found, reports. It has its own sky rotation and its
 * own projection, so that the measurement can be checked against it.
 */
package rondure.sim;
