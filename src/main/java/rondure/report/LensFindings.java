package rondure.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import rondure.base.Orientation;
import rondure.blur.LensErrors;
import rondure.blur.LensFinding;
import rondure.blur.LensSurface;
import rondure.report.layout.Wording;

/** Says what a lens does over the field: what was found, what was not, what cannot be told. */
final class LensFindings {
  /** Standard errors beyond which a number is not chance. */
  private static final double SURE = 2;

  /** What widens the core by less than this is not worth a word. */
  private static final double MATTERS = 1.05;

  /** What may widen the core by more than this is not to be called absent. */
  private static final double OPEN = 1.15;

  private static final double RIVAL_SHARE = 0.1;

  private final LensModel lens;
  private final LensSurface surface;
  private final LensErrors errors;
  private final Orientation orientation;
  private final Wording words;

  LensFindings(LensModel lens, Orientation orientation, Wording words) {
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
        new LensView.Finding(words.say("lens.name.tilt"), tilt()),
        new LensView.Finding(words.say("lens.name.curvature"), curvature()),
        new LensView.Finding(words.say("lens.name.astigmatism"), astigmatism()),
        new LensView.Finding(words.say("lens.name.coma"), coma()));
  }

  /** Of a size whose square, times {@code perSquare}, adds to the second moment. */
  private Told told(double size, double error, double perSquare) {
    double most = Math.abs(size) + SURE * error;
    if (Math.abs(size) > SURE * error && lens.widening(size * size * perSquare) >= MATTERS) {
      return Told.FOUND;
    }
    return lens.widening(most * most * perSquare) >= OPEN ? Told.OPEN : Told.SMALL;
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
    Told told = told(sides.discPx() / 2, sides.errorPx() / 2, 1 / 16.0);
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

  private String side(int eighth) {
    return words.say(String.format(Locale.ROOT, "lens.side.%d", eighth));
  }

  private String curvature() {
    double disc = Math.abs(surface.curvaturePx());
    Told told = told(disc, errors.curvaturePx(), 1 / 16.0);
    return words.say(
        "lens.curvature." + told,
        "disc",
        Figures.px(disc),
        "error",
        Figures.px(SURE * errors.curvaturePx()),
        "most",
        Figures.px(disc + SURE * errors.curvaturePx()));
  }

  private String astigmatism() {
    double split = Math.abs(surface.astigmatismPx());
    Told told = told(split, errors.astigmatismPx(), 1 / 64.0);
    double disc = surface.curvaturePx() - surface.curvaturePx() / 3;
    boolean outwards = disc * surface.astigmatismPx() > 0;
    return words.say(
        "lens.astigmatism." + told,
        "way",
        words.say(outwards ? "lens.way.along" : "lens.way.around"),
        "disc",
        Figures.px(split),
        "error",
        Figures.px(SURE * errors.astigmatismPx()),
        "most",
        Figures.px(split + SURE * errors.astigmatismPx()));
  }

  /** Its tail is three times its coefficient; the square of that is what the fit knows. */
  private String coma() {
    double px2 = Math.max(0, surface.comaPx2());
    double most = px2 + SURE * errors.comaPx2();
    boolean matters = lens.widening(px2 / 3) >= MATTERS;
    Told told = Told.SMALL;
    if (px2 > SURE * errors.comaPx2() && matters) {
      told = Told.FOUND;
    } else if (lens.widening(most / 3) >= OPEN) {
      told = Told.OPEN;
    }
    return words.say(
        "lens.coma." + (told == Told.FOUND ? surface.comaGrowth().name() : told.name()),
        "tail",
        Figures.px(3 * Math.sqrt(px2)),
        "most",
        Figures.px(3 * Math.sqrt(most)));
  }

  /** Cautions: other lenses that explain the same stars. */
  List<String> cautions(List<LensFinding> lenses) {
    List<String> cautions = new ArrayList<>();
    double others = lenses.stream().skip(1).mapToDouble(LensFinding::share).sum();
    if (others >= RIVAL_SHARE) {
      cautions.add(words.say("lens.rivals", "odds", Figures.percent(others)));
    }
    return cautions;
  }
}
