package rondure.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rondure.blur.BestCase;
import rondure.intake.ShotFacts;
import rondure.report.layout.Wording;

/**
 * What the lens alone would make of a star at narrower apertures: discs shrink as 1/N and coma as
 * 1/N² (geometric optics), diffraction grows with N.
 */
final class LensStops {
  private static final int STOPS = 2;

  private final LensSetup setup;
  private final LensModel lens;
  private final Wording words;

  LensStops(LensSetup setup, LensModel lens, Wording words) {
    this.setup = setup;
    this.lens = lens;
    this.words = words;
  }

  /** The aperture as it was, one and two stops down. */
  List<LensView.Stop> rows() {
    List<LensView.Stop> rows = new ArrayList<>();
    for (int stops = 0; stops <= STOPS; stops++) {
      rows.add(row(stops));
    }
    return rows;
  }

  private LensView.Stop row(int stops) {
    double ratio = Math.pow(2, stops / 2.0);
    LensModel there = diffracted(ratio);
    return new LensView.Stop(
        aperture(stops, ratio),
        words.say("lens.light." + stops),
        Figures.px(there.widthAt(0, 0, 1 / ratio)),
        Figures.px(there.sideWidthPx(1 / ratio)),
        Figures.px(there.cornerWidthPx(1 / ratio)));
  }

  private String aperture(int stops, double ratio) {
    return setup
        .widestFNumber()
        .map(
            f ->
                words.say(
                    stops == 0 ? "lens.stop.here" : "lens.stop.at",
                    "fNumber",
                    Figures.plain(1, f * ratio)))
        .orElseGet(() -> words.say("lens.stop.unknown." + stops));
  }

  /** The core with more diffraction, where aperture and pixels are known. */
  private LensModel diffracted(double ratio) {
    Optional<Double> pitch = setup.figures().usual(ShotFacts::pixelPitchMicrons);
    Optional<Double> fNumber = setup.widestFNumber();
    if (pitch.isEmpty() || fNumber.isEmpty()) {
      return lens;
    }
    double airy = BestCase.airyFwhmPx(fNumber.get(), pitch.get());
    return lens.withDiffraction(airy, airy * ratio);
  }

  /** Whether that is worth it beside sky and tripod. */
  List<String> sentences() {
    List<String> sentences = new ArrayList<>();
    StopDown.sentence(setup.figures(), words).ifPresent(sentences::add);
    boolean diffraction =
        setup.widestFNumber().isPresent()
            && setup.figures().usual(ShotFacts::pixelPitchMicrons).isPresent();
    sentences.add(words.say(diffraction ? "lens.stop.note" : "lens.stop.noteUnknown"));
    return sentences;
  }
}
