/**
 * The moving sky: where stars go on the sensor, how long a trail an exposure gives, what stays put,
 * and how the frames of a scene hang together.
 *
 * <p>In: facts of an exposure, star lists of the frames of one scene. Out: image velocities,
 * trails, exposure limits, plate scale, star lists without static detections, and for each scene
 * its camera, the celestial pole, each frame's attitude and the tripod's motion. Steps: camera and
 * pole to velocity; positions of all frames to spots that stay on the sensor; star lists to matched
 * frames, places of the same stars to the camera, to one map of the stars, to the spin of the sky
 * and what the camera adds to it. Knows nothing of: pixels, files, causes of blur, grades, pages.
 */
package rondure.sky;
