/**
 * The moving sky: where stars go on the sensor, how long a trail an exposure gives, what stays put.
 *
 * <p>In: facts of an exposure, star lists of the frames of one scene. Out: image velocities,
 * trails, exposure limits, plate scale, star lists without static detections. Steps: camera and
 * pole to velocity; places of the same stars to the camera; positions of all frames to spots that
 * stay on the sensor. Knows nothing of: pixels, files, causes of blur, grades, pages.
 */
package rondure.sky;
