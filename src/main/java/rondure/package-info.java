/**
 * The whole program, read from top to bottom.
 *
 * <p>In: folders, settings. Out: an output folder with the report and the data files. Steps: scan,
 * read facts, group copies, find what was measured before, measure the other exposures in the crew,
 * build the night, write everything. Knows nothing of: the command line, the simulator.
 */
package rondure;
