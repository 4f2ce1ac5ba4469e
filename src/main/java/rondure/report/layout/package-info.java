/**
 * From templates and views to a tagged PDF; the only package that meets Mustache, OpenHTMLtoPDF and
 * PDFBox.
 *
 * <p>In: template files, view records, named pictures. Out: PDF bytes. Steps: fill the templates,
 * check that they are well formed, replace glyphs the fonts lack, lay out, add note fields, fix
 * date and id, save. Knows nothing of: nights, frames, stars, what the pictures show.
 */
package rondure.report.layout;
