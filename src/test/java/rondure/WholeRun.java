package rondure;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import rondure.night.NightBook;
import rondure.report.OutputProblem;
import rondure.report.ReportSettings;

/** The whole program over one folder, as a user would run it without options, in one worker. */
final class WholeRun {
  private WholeRun() {}

  static NightBook of(Path folder, Path output)
      throws CommandProblem, OutputProblem, IOException, InterruptedException {
    ReportSettings report = ReportSettings.defaults("test", Settings.shownDefaults());
    Settings settings = Settings.of(GivenFacts.none(), report, Optional.of(1), false);
    Request request = new Request(List.of(folder), Optional.of(output));
    return new Pipeline(request, settings, new Silent()).run().book();
  }

  static class Silent implements Progress {
    @Override
    public void start(RunStart start) {}

    @Override
    public void begin(String stage, int total) {}

    @Override
    public void step() {}

    @Override
    public void end() {}

    @Override
    public void say(String sentence) {}
  }
}
