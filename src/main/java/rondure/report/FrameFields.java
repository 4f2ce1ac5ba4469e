package rondure.report;

import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import rondure.blur.Cause;
import rondure.blur.Verdict;
import rondure.intake.CaptureTime;
import rondure.intake.Fact;
import rondure.night.NightFrame;

/** The spellings that night.json, frames.csv and keep.txt share. */
final class FrameFields {
  private FrameFields() {}

  /** An enum constant in the data files' spelling: LOOK_CLOSER becomes lookCloser. */
  static String spelled(Enum<?> constant) {
    String[] words = constant.name().toLowerCase(Locale.ROOT).split("_");
    StringBuilder text = new StringBuilder(words[0]);
    for (int i = 1; i < words.length; i++) {
      text.append(Character.toUpperCase(words[i].charAt(0))).append(words[i].substring(1));
    }
    return text.toString();
  }

  /** ISO 8601 local time, with the offset when the file says it. */
  static Optional<String> time(NightFrame frame) {
    return frame.facts().captureTime().map(FrameFields::isoTime);
  }

  static String isoTime(CaptureTime time) {
    String local = time.local().format(DateTimeFormatter.ISO_LOCAL_DATE_TIME);
    return time.offsetSeconds().isPresent()
        ? local + ZoneOffset.ofTotalSeconds(time.offsetSeconds().getAsInt())
        : local;
  }

  /** How well the time is known: offset, local, or order (file order only). */
  static String timeKnown(NightFrame frame) {
    Optional<CaptureTime> time = frame.facts().captureTime();
    if (time.isEmpty()) {
      return "order";
    }
    return time.get().offsetSeconds().isPresent() ? "offset" : "local";
  }

  /** The cause in the data files' spelling: undecided when the verdict is open. */
  static Optional<String> cause(NightFrame frame) {
    return frame.verdict().map(v -> v.cause().map(FrameFields::spelled).orElse("undecided"));
  }

  static Optional<Double> confidence(NightFrame frame) {
    return frame.verdict().map(Verdict::confidence);
  }

  static Optional<Double> probability(NightFrame frame, Cause cause) {
    return frame.verdict().map(v -> v.probabilities().get(cause));
  }

  static Optional<Double> value(Optional<Fact<Double>> fact) {
    return fact.map(Fact::value);
  }
}
