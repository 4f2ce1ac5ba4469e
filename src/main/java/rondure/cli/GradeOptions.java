package rondure.cli;

import picocli.CommandLine.Option;
import rondure.night.GradeSettings;
import rondure.night.UseSettings;

/** What a frame is kept for. */
final class GradeOptions {
  private static final double LARGEST_SIDE_PX = 200_000;

  @Option(
      names = "--screen-side",
      paramLabel = "PX",
      description = "longer side of a picture that fills your screen; 3840 as it is (4K)")
  private int screenSidePx = (int) UseSettings.defaults().screenLongSidePx();

  @Option(
      names = "--web-side",
      paramLabel = "PX",
      description =
          "longer side of a picture on your web page; 2048 as it is; a frame whose stars are points"
              + " at no size as large as this is set aside")
  private int webSidePx = (int) UseSettings.defaults().webLongSidePx();

  @Option(
      names = "--keep-width",
      paramLabel = "TIMES",
      description =
          "keep: stars at most so many times as wide as those of the scene's sharpest tenth; 1.25"
              + " as it is")
  private double keepWidth = GradeSettings.defaults().keepWidthRatio();

  @Option(
      names = "--keep-roundness",
      paramLabel = "B/A",
      description = "keep: stars at least so round, short over long axis; 0.8 as it is")
  private double keepRoundness = GradeSettings.defaults().keepRoundness();

  @Option(
      names = "--aside-width",
      paramLabel = "TIMES",
      description = "set aside: stars more than so many times as wide; 1.6 as it is")
  private double asideWidth = GradeSettings.defaults().asideWidthRatio();

  @Option(
      names = "--aside-roundness",
      paramLabel = "B/A",
      description = "set aside: stars less round than that; 0.6 as it is")
  private double asideRoundness = GradeSettings.defaults().asideRoundness();

  /**
   * @throws IllegalArgumentException for people, when a limit makes no sense
   */
  GradeSettings settings() {
    within("--screen-side", 100, LARGEST_SIDE_PX, screenSidePx);
    within("--web-side", 100, LARGEST_SIDE_PX, webSidePx);
    within("--keep-width", 1, 100, keepWidth);
    within("--aside-width", 1, 100, asideWidth);
    within("--keep-roundness", 0, 1, keepRoundness);
    within("--aside-roundness", 0, 1, asideRoundness);
    ordered("--web-side", webSidePx, "--screen-side", screenSidePx);
    ordered("--keep-width", keepWidth, "--aside-width", asideWidth);
    ordered("--aside-roundness", asideRoundness, "--keep-roundness", keepRoundness);
    UseSettings usual = UseSettings.defaults();
    return new GradeSettings(
        keepWidth,
        keepRoundness,
        asideWidth,
        asideRoundness,
        new UseSettings(
            usual.pointFwhmPx(),
            usual.pointAxisRatio(),
            usual.pointSkyShare(),
            screenSidePx,
            webSidePx));
  }

  private static void within(String name, double least, double most, double value) {
    if (!(value >= least && value <= most)) {
      throw new IllegalArgumentException(
          name
              + " must be "
              + ExposurePage.plain(least)
              + " to "
              + ExposurePage.plain(most)
              + ", was "
              + ExposurePage.plain(value));
    }
  }

  private static void ordered(String lower, double low, String upper, double high) {
    if (low > high) {
      throw new IllegalArgumentException(
          lower
              + " must be at most "
              + upper
              + ", was "
              + ExposurePage.plain(low)
              + " and "
              + ExposurePage.plain(high));
    }
  }
}
