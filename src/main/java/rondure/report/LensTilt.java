package rondure.report;

import java.util.Locale;
import rondure.base.Orientation;
import rondure.report.LensWeight.Told;
import rondure.report.layout.Wording;
import rondure.stars.StarField;

/**
 * Says whether a lens or sensor stands askew, and which side is softer.
 *
 * @param lens the lens alone
 * @param sample stars of the frame that shows the lens best
 * @param orientation in which it is shown
 */
record LensTilt(LensModel lens, StarField sample, Orientation orientation, Wording words) {

  String sentences() {
    LensSides sides = LensSides.of(lens, orientation);
    return lensAlone(sides) + asSeen(sides);
  }

  private String lensAlone(LensSides sides) {
    LensWeight weight = new LensWeight(lens);
    double error = weight.squareError(sides.errorPx() / 2, LensWeight.PER_DISC);
    Told told = weight.square(sides.discPx() / 2, error, LensWeight.PER_DISC);
    String found = sides.differ() ? "softer" : "alike";
    return words.say(
        "lens.tilt." + (told == Told.FOUND ? found : told.name()),
        "soft",
        side(sides.softer()),
        "sharp",
        side(LensSides.opposite(sides.softer())),
        "softWidth",
        Figures.px(sides.softerPx()),
        "sharpWidth",
        Figures.px(sides.sharperPx()),
        "disc",
        Figures.px(sides.discPx()),
        "error",
        Figures.px(2 * error),
        "most",
        Figures.px(sides.discPx() + 2 * error));
  }

  /** Which of the two sides is softer in the frame itself, where one is. */
  private String asSeen(LensSides sides) {
    return SideWidths.of(sample, orientation, sides.towards())
        .filter(SideWidths::differ)
        .map(this::asSeen)
        .orElse("");
  }

  private String asSeen(SideWidths widths) {
    return " "
        + words.say(
            "lens.tilt.seen",
            "soft",
            side(widths.softer()),
            "sharp",
            side(LensSides.opposite(widths.softer())),
            "softWidth",
            Figures.px(widths.softerPx()),
            "sharpWidth",
            Figures.px(widths.sharperPx()));
  }

  private String side(int eighth) {
    return words.say(String.format(Locale.ROOT, "lens.side.%d", eighth));
  }
}
