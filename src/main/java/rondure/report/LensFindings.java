package rondure.report;

import java.util.List;
import rondure.base.Orientation;
import rondure.blur.LensErrors;
import rondure.blur.LensFinding;
import rondure.blur.LensSurface;
import rondure.report.LensWeight.Told;
import rondure.report.layout.Wording;
import rondure.stars.StarField;

/** Says what a lens does over the field: what was found, what was not, what cannot be told. */
final class LensFindings {
  /** Coma of coefficient c adds c²/3. */
  private static final double PER_COMA = 1 / 3.0;

  private static final double RIVAL_SHARE = 0.1;

  private final LensModel lens;
  private final LensSurface surface;
  private final LensErrors errors;
  private final LensWeight weight;
  private final LensTilt tilt;
  private final Wording words;

  /**
   * @param sample stars of the frame that shows the lens best
   * @param orientation in which it is shown
   */
  LensFindings(LensModel lens, StarField sample, Orientation orientation, Wording words) {
    this.lens = lens;
    this.surface = lens.surface();
    this.errors = lens.errors();
    this.weight = new LensWeight(lens);
    this.tilt = new LensTilt(lens, sample, orientation, words);
    this.words = words;
  }

  List<LensView.Finding> all() {
    return List.of(
        new LensView.Finding(words.say("lens.name.whole"), whole()),
        new LensView.Finding(words.say("lens.name.tilt"), tilt.sentences()),
        new LensView.Finding(words.say("lens.name.curvature"), curvature()),
        new LensView.Finding(words.say("lens.name.astigmatism"), astigmatism()),
        new LensView.Finding(words.say("lens.name.coma"), coma()));
  }

  private String whole() {
    double corner = lens.cornerWidthPx(1);
    double centre = lens.widthAt(0, 0, 1);
    String key = corner >= LensWeight.MATTERS * centre ? "lens.whole.softer" : "lens.whole.alike";
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

  private String curvature() {
    double disc = Math.abs(surface.curvaturePx());
    double error = weight.squareError(errors.curvaturePx(), LensWeight.PER_DISC);
    return words.say(
        "lens.curvature." + weight.square(disc, error, LensWeight.PER_DISC),
        "disc",
        Figures.px(disc),
        "error",
        Figures.px(error),
        "most",
        Figures.px(disc + error));
  }

  private String astigmatism() {
    double split = Math.abs(surface.astigmatismPx());
    double error = weight.squareError(errors.astigmatismPx(), LensWeight.PER_SPLIT);
    boolean outwards = surface.curvaturePx() * surface.astigmatismPx() > 0;
    return words.say(
        "lens.astigmatism." + weight.square(split, error, LensWeight.PER_SPLIT),
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
    double error = weight.plainError(errors.comaPx2(), PER_COMA);
    Told told = weight.plain(px2, error, PER_COMA);
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
    boolean soft = lens.cornerWidthPx(1) >= LensWeight.MATTERS * lens.widthAt(0, 0, 1);
    return soft ? List.of(words.say("lens.mixed")) : List.of();
  }
}
