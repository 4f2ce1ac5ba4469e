/**
 * The commands a person types.
 *
 * <p>In: arguments. Out: an exit code, sentences on the terminal. Steps: parse, run, tell. Knows
 * nothing of: pixels, stars, pages.
 */
package rondure.cli;
