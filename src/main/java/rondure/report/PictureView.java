package rondure.report;

/**
 * A drawing or photograph on a page.
 *
 * @param name as registered with the pictures
 * @param alt what it shows, in words made from its data
 * @param widthPx CSS pixels
 * @param heightPx CSS pixels
 */
record PictureView(String name, String alt, long widthPx, long heightPx) {}
