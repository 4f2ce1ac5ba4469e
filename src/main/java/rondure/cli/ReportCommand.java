package rondure.cli;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import rondure.Pipeline;
import rondure.Request;
import rondure.RunSummary;
import rondure.Settings;
import rondure.night.NightSettings;
import rondure.report.sidecar.SidecarSettings;

/** Reads a night and writes its report. */
@Command(
    name = "report",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = "Reads a night's frames and writes report.pdf and the data files.",
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:done",
      "1:done, some frames unreadable, or not explained because of a fault of this program",
      "2:bad command or folder",
      "3:no report could be made",
      "130:stopped by the user"
    })
final class ReportCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(arity = "1..*", paramLabel = "FOLDER", description = "folders of frames, or files")
  private List<Path> inputs;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description = "where the results go: a new or empty folder, or one of an earlier run")
  private Path out;

  @Option(names = "--workers", paramLabel = "N", description = "worker processes; one per core")
  private Integer workers;

  @Option(
      names = "--largest-frame",
      paramLabel = "MP",
      defaultValue = "250",
      description = "pictures of more megapixels are not read; ${DEFAULT-VALUE}, at most 400")
  private double largestFrame;

  @Option(names = "--star-table", description = "also write stars.csv.gz")
  private boolean starTable;

  @ArgGroup(validate = false, heading = "%nFacts that the files do not hold, or hold wrongly:%n")
  private FactOptions facts = new FactOptions();

  @ArgGroup(validate = false, heading = "%nWhat is kept, and for what use:%n")
  private GradeOptions grades = new GradeOptions();

  @ArgGroup(validate = false, heading = "%nFocus tests:%n")
  private SeriesOptions series = new SeriesOptions();

  @ArgGroup(validate = false, heading = "%nSidecars for photo managers:%n")
  private SidecarOptions sidecars = new SidecarOptions();

  @ArgGroup(validate = false, heading = "%nThe report's looks:%n")
  private PageOptions pages = new PageOptions();

  @Override
  public Integer call() throws Exception {
    Terminal terminal = Terminal.of(spec.commandLine());
    Settings settings = settings();
    Request request =
        new Request(inputs, Optional.ofNullable(out), sidecarSettings(), series.named());
    TerminalProgress progress = new TerminalProgress(terminal, screen());
    RunSummary summary = run(new Pipeline(request, settings, progress), progress);
    new EndWords(summary).tell(terminal);
    boolean all = summary.unreadableCount() == 0 && summary.unexplainedCount() == 0;
    return all ? ExitCode.DONE : ExitCode.NOT_ALL;
  }

  private SidecarSettings sidecarSettings() {
    try {
      return sidecars.settings();
    } catch (IllegalArgumentException e) {
      throw new ParameterException(spec.commandLine(), e.getMessage());
    }
  }

  private static RunSummary run(Pipeline pipeline, TerminalProgress progress) throws Exception {
    try {
      return pipeline.run();
    } finally {
      progress.end();
    }
  }

  private Settings settings() {
    try {
      NightSettings night = NightSettings.defaults().withGrades(grades.settings());
      return Settings.of(
              facts.given(),
              pages.settings(Settings.shown(night, largestFrame)),
              Optional.ofNullable(workers),
              starTable)
          .withNight(night)
          .withLargestFrame(largestFrame);
    } catch (IllegalArgumentException e) {
      throw new ParameterException(spec.commandLine(), e.getMessage());
    }
  }

  /** Where a progress bar can be seen: nowhere when the output goes into a file or pipe. */
  private static Optional<PrintStream> screen() {
    return System.console() == null ? Optional.empty() : Optional.of(System.out);
  }
}
