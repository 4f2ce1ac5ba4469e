package rondure.cli;

import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Option;
import rondure.night.NamedSeries;

/** Focus test series that the user names. */
final class SeriesOptions {
  @Option(
      names = "--focus-test",
      arity = "2",
      paramLabel = "FIRST LAST",
      hideParamSyntax = true,
      description =
          "the first and the last picture of a focus test series; once for each series. Without it"
              + " series are looked for")
  private List<String> ends = new ArrayList<>();

  /** The series, each by the names that were given. */
  List<NamedSeries> named() {
    List<NamedSeries> named = new ArrayList<>();
    for (int i = 0; i + 1 < ends.size(); i += 2) {
      named.add(new NamedSeries(ends.get(i), ends.get(i + 1)));
    }
    return named;
  }
}
