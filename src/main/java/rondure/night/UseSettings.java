package rondure.night;

/**
 * When a star is a point, and the sizes at which pictures are used.
 *
 * @param pointFwhmPx [2.5] widest long-axis FWHM of a point at output size, px (common practice)
 * @param pointAxisRatio [1.3] most oval point, a/b (common practice)
 * @param pointSkyShare [0.8] share of the sky's area where stars must be points (common practice)
 * @param screenLongSidePx [3840] longer side of a picture that fills a 4K screen (3840 x 2160,
 *     Recommendation ITU-R BT.2020)
 * @param webLongSidePx [2048] longer side of a picture on a web page (common practice); half its
 *     own longer side for smaller pictures
 */
public record UseSettings(
    double pointFwhmPx,
    double pointAxisRatio,
    double pointSkyShare,
    double screenLongSidePx,
    double webLongSidePx) {
  /** Narrowest FWHM that a pixel allows, px: a Gaussian of its box's variance, 1/12 px². */
  private static final double PIXEL_FWHM_PX = Math.sqrt(8 * Math.log(2) / 12);

  public UseSettings {
    require("pointFwhmPx", pointFwhmPx > PIXEL_FWHM_PX, "> " + PIXEL_FWHM_PX, pointFwhmPx);
    require("pointAxisRatio", pointAxisRatio > 1, "> 1", pointAxisRatio);
    require("pointSkyShare", pointSkyShare > 0 && pointSkyShare <= 1, "in (0, 1]", pointSkyShare);
    require("webLongSidePx", webLongSidePx > 0, "> 0", webLongSidePx);
    require(
        "screenLongSidePx",
        screenLongSidePx >= webLongSidePx,
        ">= webLongSidePx, which is " + webLongSidePx,
        screenLongSidePx);
  }

  public static UseSettings defaults() {
    return new UseSettings(2.5, 1.3, 0.8, 3840, 2048);
  }

  private static void require(String name, boolean holds, String what, double value) {
    if (!holds) {
      throw new IllegalArgumentException(name + " must be " + what + ", was " + value);
    }
  }
}
