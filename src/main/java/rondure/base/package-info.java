/**
 * The few types that every other package speaks: pixels, moments, orientation, trouble.
 *
 * <p>In: numbers. Out: checked values. Steps: none. Knows nothing of: pictures' formats, stars, the
 * night.
 */
package rondure.base;
