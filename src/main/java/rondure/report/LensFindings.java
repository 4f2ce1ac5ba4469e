package rondure.report;

import java.util.List;
import java.util.Locale;
import rondure.base.Orientation;
import rondure.blur.LensErrors;
import rondure.blur.LensFinding;
import rondure.blur.LensSurface;
import rondure.report.layout.Wording;
import rondure.stars.StarField;

/** Says what a lens does over the field: what was found, what was not, what cannot be told. */
final class LensFindings {
  /** Standard errors beyond which a number is not chance. */
  private static final double SURE = 2;

  /** What widens the core by less than this is not worth a word. */
  private static final double MATTERS = 1.05;

  /** What may widen the core by more than this is not to be called absent. */
  private static final double OPEN = 1.15;

  /**
   * So much of what softens the corners one of curvature, astigmatism and coma may take from the
   * others: measured moments of wide stars are off by as much (docs/accuracy.md).
   */
  private static final double MIXED_SHARE = 0.25;

  /** A disc of diameter D adds D²/16. */
  private static final double PER_DISC = 1 / 16.0;

  /** Discs that differ by a along and across add a²/64. */
  private static final double PER_SPLIT = 1 / 64.0;

  private static final double RIVAL_SHARE = 0.1;

  private final LensModel lens;
  private final LensSurface surface;
  private final LensErrors errors;
  private final StarField sample;
  private final Orientation orientation;
  private final Wording words;

  /**
   * @param sample stars of the frame that shows the lens best
   * @param orientation in which it is shown
   */
  LensFindings(LensModel lens, StarField sample, Orientation orientation, Wording words) {
    this.sample = sample;
    this.lens = lens;
    this.surface = lens.surface();
    this.errors = lens.errors();
    this.orientation = orientation;
    this.words = words;
  }

  /** Whether a number was found, ruled out, or neither. */
  private enum Told {
    FOUND,
    SMALL,
    OPEN
  }

  List<LensView.Finding> all() {
    return List.of(
        new LensView.Finding(words.say("lens.name.whole"), whole()),
        new LensView.Finding(words.say("lens.name.tilt"), tilt() + asSeen()),
        new LensView.Finding(words.say("lens.name.curvature"), curvature()),
        new LensView.Finding(words.say("lens.name.astigmatism"), astigmatism()),
        new LensView.Finding(words.say("lens.name.coma"), coma()));
  }

  /**
   * By what a number adds to the second moment.
   *
   * @param sure whether it is more than its error
   * @param px2 what it adds
   * @param mostPx2 what it may add at most
   */
  private Told told(boolean sure, double px2, double mostPx2) {
    if (sure && lens.widening(px2) >= MATTERS) {
      return Told.FOUND;
    }
    return lens.widening(mostPx2) >= OPEN ? Told.OPEN : Told.SMALL;
  }

  /** Of the diameter of a disc. */
  private Told toldDisc(double size, double error, double perSquare) {
    double most = size + error;
    return told(size > error, size * size * perSquare, most * most * perSquare);
  }

  /** Twice the standard error, and what may be another's. */
  private double discError(double standardError, double perSquare) {
    return Math.hypot(SURE * standardError, Math.sqrt(mixedPx2() / perSquare));
  }

  private double mixedPx2() {
    return MIXED_SHARE * lens.cornerAddedPx2();
  }

  private String whole() {
    double corner = lens.cornerWidthPx(1);
    double centre = lens.widthAt(0, 0, 1);
    String key = corner >= MATTERS * centre ? "lens.whole.softer" : "lens.whole.alike";
    return words.say(
        key,
        "centre",
        Figures.px(centre),
        "side",
        Figures.px(lens.sideWidthPx(1)),
        "corner",
        Figures.px(corner),
        "percent",
        Figures.percent(corner / centre - 1));
  }

  private String tilt() {
    LensSides sides = LensSides.of(lens, orientation);
    Told told = toldDisc(sides.discPx() / 2, SURE * sides.errorPx() / 2, PER_DISC);
    String key = told == Told.FOUND ? (sides.differ() ? "softer" : "alike") : told.name();
    return words.say(
        "lens.tilt." + key,
        "soft",
        side(sides.softer()),
        "sharp",
        side(sides.sharper()),
        "softWidth",
        Figures.px(sides.softerPx()),
        "sharpWidth",
        Figures.px(sides.sharperPx()),
        "disc",
        Figures.px(sides.discPx()),
        "error",
        Figures.px(SURE * sides.errorPx()),
        "most",
        Figures.px(sides.discPx() + SURE * sides.errorPx()));
  }

  /** Which of the two sides is softer in the frame itself, where one is. */
  private String asSeen() {
    LensSides sides = LensSides.of(lens, orientation);
    return SideWidths.of(sample, orientation, sides.towards())
        .filter(SideWidths::differ)
        .map(
            widths ->
                " "
                    + words.say(
                        "lens.tilt.seen",
                        "soft",
                        side(widths.softer()),
                        "sharp",
                        side((widths.softer() + 4) % 8),
                        "softWidth",
                        Figures.px(widths.softerPx()),
                        "sharpWidth",
                        Figures.px(widths.sharperPx())))
        .orElse("");
  }

  private String side(int eighth) {
    return words.say(String.format(Locale.ROOT, "lens.side.%d", eighth));
  }

  private String curvature() {
    double disc = Math.abs(surface.curvaturePx());
    double error = discError(errors.curvaturePx(), PER_DISC);
    return words.say(
        "lens.curvature." + toldDisc(disc, error, PER_DISC),
        "disc",
        Figures.px(disc),
        "error",
        Figures.px(error),
        "most",
        Figures.px(disc + error));
  }

  private String astigmatism() {
    double split = Math.abs(surface.astigmatismPx());
    double error = discError(errors.astigmatismPx(), PER_SPLIT);
    boolean outwards = surface.curvaturePx() * surface.astigmatismPx() > 0;
    return words.say(
        "lens.astigmatism." + toldDisc(split, error, PER_SPLIT),
        "way",
        words.say(outwards ? "lens.way.along" : "lens.way.around"),
        "disc",
        Figures.px(split),
        "error",
        Figures.px(error),
        "most",
        Figures.px(split + error));
  }

  /** Its tail is three times its coefficient; the square of that is what the fit knows. */
  private String coma() {
    double px2 = Math.max(0, surface.comaPx2());
    double error = Math.hypot(SURE * errors.comaPx2(), 3 * mixedPx2());
    Told told = told(px2 > error, px2 / 3, (px2 + error) / 3);
    return words.say(
        "lens.coma." + (told == Told.FOUND ? surface.comaGrowth().name() : told.name()),
        "tail",
        Figures.px(3 * Math.sqrt(px2)),
        "most",
        Figures.px(3 * Math.sqrt(px2 + error)));
  }

  /** How far each of the numbers may be trusted, where the corners are soft. */
  List<String> cautions(List<LensFinding> lenses) {
    double others = lenses.stream().skip(1).mapToDouble(LensFinding::share).sum();
    if (others >= RIVAL_SHARE) {
      return List.of(words.say("lens.rivals", "odds", Figures.percent(others)));
    }
    boolean soft = lens.cornerWidthPx(1) >= MATTERS * lens.widthAt(0, 0, 1);
    return soft ? List.of(words.say("lens.mixed")) : List.of();
  }
}
