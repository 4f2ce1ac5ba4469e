/**
 * Measurements kept from run to run, so that a night is measured once.
 *
 * <p>In: a folder, what was measured of which bytes, in which way and by which program. Out: the
 * same measurement bit for bit, or nothing. Steps: name the record by everything that the
 * measurement follows from, pack it with its checksum, write it whole, read it back within bounds,
 * doubt whatever is not exactly right, remove what the night no longer needs. Knows nothing of: the
 * night, the report, who holds the folder.
 */
package rondure.store;
