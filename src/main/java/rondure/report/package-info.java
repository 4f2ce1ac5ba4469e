/**
 * What the reader gets: pages.
 *
 * <p>In: a {@link rondure.night.NightBook} and {@link rondure.report.ReportSettings}. Out: the PDF.
 * Steps: choose which frames get a full entry, turn numbers into words and views, name the
 * pictures, fill the templates, lay out. Knows nothing of: files of the night, pixels, how anything
 * was measured.
 */
package rondure.report;
