/**
 * The pool of worker processes: files in, facts and measured records out.
 *
 * <p>Decoding runs native code over files of any quality, so it runs in child processes. A native
 * crash, a hang or a full heap costs the one file it happened on; this process holds no pixels.
 *
 * <p>In: paths, the facts of each shot, star settings. Out: one {@link rondure.crew.Outcome} per
 * file, in the order of the files. Whoever keeps measurements hears of each at once, with a digest
 * of the file's bytes. Steps: start workers, hand out jobs, watch each one's time and memory, try
 * again on a fresh worker after a death, put the answers in order, deliver. Knows nothing of: other
 * frames of the night, causes, reports.
 */
package rondure.crew;
