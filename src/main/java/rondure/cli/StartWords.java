package rondure.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import rondure.RunStart;

/** What a run says before the long work. */
final class StartWords {
  private StartWords() {}

  static List<String> of(RunStart start) {
    String formats =
        start.filesByFormat().entrySet().stream()
            .map(entry -> entry.getValue() + " " + entry.getKey())
            .collect(Collectors.joining(", "));
    List<String> words = new ArrayList<>();
    words.add(
        counted(start.exposures(), "frame")
            + " in "
            + counted(start.folders(), "folder")
            + " ("
            + formats
            + ").");
    if (start.measuredBefore() > 0) {
      words.add(measuredBefore(start));
    }
    words.add(expected(start));
    return words;
  }

  private static String measuredBefore(RunStart start) {
    return "Of "
        + counted(start.exposures(), "frame")
        + ", "
        + start.measuredBefore()
        + (start.measuredBefore() == 1 ? " was" : " were")
        + " measured before.";
  }

  private static String expected(RunStart start) {
    String megapixels = String.format(Locale.ROOT, "%.0f", start.megapixels());
    String why =
        " ("
            + megapixels
            + " megapixels, "
            + counted(start.workers(), "worker")
            + ", reckoned at "
            + Math.round(RunStart.MEGAPIXELS_PER_SECOND)
            + " megapixels a second for each).";
    long minutes = Math.round(start.expectedSeconds() / 60);
    return minutes < 1
        ? "This should take less than a minute" + why
        : "This should take about " + counted(minutes, "minute") + why;
  }

  private static String counted(long count, String noun) {
    return count + " " + noun + (count == 1 ? "" : "s");
  }
}
