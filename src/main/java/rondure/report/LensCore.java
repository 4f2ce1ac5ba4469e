package rondure.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rondure.base.Moments;
import rondure.blur.BestCase;
import rondure.blur.Budget;
import rondure.blur.CoreReading;
import rondure.intake.ShotFacts;
import rondure.report.layout.Wording;
import rondure.report.picture.WidthLadder;
import rondure.report.picture.WidthLadder.Rung;

/** The best star of a lens and sensor beside what light and pixels allow. */
final class LensCore {
  private static final double PIXEL_PX2 = 1 / 12.0;
  private static final double SURE = 0.8;
  private static final double NEAR_LIMIT = 1.3;

  private final LensModel lens;
  private final CoreReading core;
  private final Optional<Double> pitchMicrons;
  private final Optional<Double> fNumber;
  private final boolean approximate;
  private final Wording words;

  LensCore(LensSetup setup, LensModel lens, CoreReading core, Wording words) {
    this.lens = lens;
    this.core = core;
    this.pitchMicrons = setup.figures().usual(ShotFacts::pixelPitchMicrons);
    this.fNumber = setup.widestFNumber();
    this.approximate =
        setup.frames().stream().flatMap(f -> f.budget().stream()).anyMatch(Budget::approximate);
    this.words = words;
  }

  /** Width of the Airy disc, where aperture and pixels are known. */
  Optional<Double> airyPx() {
    return fNumber.flatMap(f -> pitchMicrons.map(p -> BestCase.airyFwhmPx(f, p)));
  }

  /** The narrowest star that diffraction and pixels allow. */
  private Optional<Double> leastPx() {
    return airyPx().map(airy -> Moments.FWHM_PER_SIGMA * Math.sqrt(BestCase.leastPx2(airy)));
  }

  WidthLadder ladder() {
    List<Rung> rungs = new ArrayList<>();
    airyPx().ifPresent(px -> rungs.add(rung("diffraction", px, false)));
    rungs.add(rung("pixel", Moments.FWHM_PER_SIGMA * Math.sqrt(PIXEL_PX2), false));
    leastPx().ifPresent(px -> rungs.add(rung("least", px, false)));
    rungs.add(rung(isReal() ? "best" : "bestGuess", lens.coreFwhmPx(), isReal()));
    rungs.add(rung("corner", lens.cornerWidthPx(1), false));
    return new WidthLadder(rungs);
  }

  private boolean isReal() {
    return core.realProbability() >= 0.5;
  }

  private Rung rung(String key, double widthPx, boolean measured) {
    String name =
        words.say("lens.rung." + key, "fNumber", fNumber.map(f -> Figures.plain(1, f)).orElse("?"));
    return new Rung(name, widthPx, length("lens.lengthShort", widthPx), measured);
  }

  /** In pixels, and in µm where their size is known. */
  private String length(String key, double px) {
    return pitchMicrons
        .map(pitch -> words.say(key, "px", Figures.px(px), "microns", microns(px * pitch)))
        .orElseGet(() -> words.say("value.width", "px", Figures.px(px)));
  }

  private static String microns(double value) {
    return Figures.fixed(value < 9.95 ? 1 : 0, value);
  }

  List<String> sentences() {
    List<String> sentences = new ArrayList<>();
    double probability = core.realProbability();
    String sure = probability >= SURE ? "sure" : probability >= 0.5 ? "likely" : "defocused";
    sentences.add(
        words.say(
            "lens.core." + sure,
            "width",
            length("lens.length", lens.coreFwhmPx()),
            "seen",
            length("lens.length", core.fwhmPx()),
            "percent",
            Figures.percent(probability)));
    sentences.add(
        leastPx()
            .map(
                least ->
                    words.say(
                        lens.coreFwhmPx() <= NEAR_LIMIT * least
                            ? "lens.limit.near"
                            : "lens.limit.far",
                        "least",
                        Figures.px(least),
                        "times",
                        Figures.fixed(1, lens.coreFwhmPx() / least)))
            .orElseGet(() -> words.say("lens.limit.unknown")));
    if (approximate) {
      sentences.add(words.say("lens.approximate"));
    }
    return sentences;
  }
}
