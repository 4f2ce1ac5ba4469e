/**
 * What the reader gets: pages and data files.
 *
 * <p>In: a {@link rondure.night.NightBook} and {@link rondure.report.ReportSettings}. Out: the PDF
 * and the data files, in their folder. Steps: choose which frames get a full entry, turn numbers
 * into words and views, name the pictures, fill the templates, lay out; write the same numbers as
 * data. Knows nothing of: the night's own files, pixels, how anything was measured.
 */
package rondure.report;
