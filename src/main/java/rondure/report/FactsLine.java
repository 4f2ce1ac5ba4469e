package rondure.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import rondure.intake.Fact;
import rondure.intake.ShotFacts;
import rondure.report.layout.Wording;

/** Exposure, aperture, sensitivity, focal length and time of a frame in one line. */
final class FactsLine {
  private FactsLine() {}

  static String of(ShotFacts facts, Wording words) {
    List<String> parts = new ArrayList<>();
    facts
        .captureTime()
        .ifPresent(
            taken ->
                parts.add(
                    Figures.date(taken.local()) + ", " + Figures.clockSeconds(taken.local())));
    add(parts, words, facts.exposureSeconds(), Figures::exposure);
    add(parts, words, facts.fNumber(), value -> "f/" + Figures.plain(1, value));
    add(parts, words, facts.iso(), value -> "ISO " + Figures.fixed(0, value));
    add(parts, words, facts.focalLengthMm(), value -> Figures.plain(1, value) + " mm");
    if (facts.exposureSeconds().isEmpty() || facts.focalLengthMm().isEmpty()) {
      parts.add(words.say("facts.incomplete"));
    }
    return String.join("  ·  ", parts);
  }

  private static void add(
      List<String> parts,
      Wording words,
      Optional<Fact<Double>> fact,
      DoubleFunction<String> format) {
    fact.ifPresent(
        known -> {
          String value = format.apply(known.value());
          boolean fromFile = known.source() == Fact.Source.FILE;
          parts.add(fromFile ? value : words.say("facts." + known.source(), "value", value));
        });
  }
}
