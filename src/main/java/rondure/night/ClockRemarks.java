package rondure.night;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Remarks on cameras whose clocks do not seem to agree. */
final class ClockRemarks {
  /** Clocks set to another time zone differ by up to 14 h. */
  private static final double LARGEST_CLOCK_ERROR_HOURS = 14;

  private ClockRemarks() {}

  /** One sentence for each two cameras that perhaps stood side by side. */
  static List<String> on(List<Shot> shots) {
    List<String> notes = new ArrayList<>();
    Map<String, double[]> spans = new TreeMap<>();
    for (Shot shot : shots) {
      shot.startSeconds()
          .ifPresent(
              start -> {
                double[] span =
                    spans.computeIfAbsent(shot.cameraName(), name -> new double[] {start, start});
                span[0] = Math.min(span[0], start);
                span[1] = Math.max(span[1], start);
              });
    }
    List<String> names = List.copyOf(spans.keySet());
    for (int i = 0; i < names.size(); i++) {
      for (int k = i + 1; k < names.size(); k++) {
        apart(names.get(i), spans.get(names.get(i)), names.get(k), spans.get(names.get(k)))
            .ifPresent(notes::add);
      }
    }
    return notes;
  }

  /** Two cameras that never ran at the same time were perhaps set to different zones. */
  private static Optional<String> apart(
      String one, double[] oneSpan, String two, double[] twoSpan) {
    double gap = Math.max(oneSpan[0], twoSpan[0]) - Math.min(oneSpan[1], twoSpan[1]);
    if (!(gap > 0 && gap < LARGEST_CLOCK_ERROR_HOURS * 3600)) {
      return Optional.empty();
    }
    return Optional.of(
        String.format(
            Locale.ROOT,
            "%s and %s were never running at the same time by their clocks (%.1f h apart); if they"
                + " stood side by side, one clock is off (shift it with --clock-shift).",
            one,
            two,
            gap / 3600));
  }
}
