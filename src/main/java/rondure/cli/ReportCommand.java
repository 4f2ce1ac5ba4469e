package rondure.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rondure.CommandProblem;
import rondure.GivenFacts;
import rondure.Pipeline;
import rondure.Request;
import rondure.RunSummary;
import rondure.Settings;
import rondure.night.Grade;
import rondure.night.NightFrame;
import rondure.report.OutputProblem;
import rondure.report.ReportSettings;

/** Reads a night and writes its report. */
@Command(
    name = "report",
    mixinStandardHelpOptions = true,
    description = "Reads a night's frames and writes report.pdf and the data files.",
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:done",
      "1:done, some frames unreadable",
      "2:bad command or folder",
      "3:no report could be made",
      "130:stopped by the user"
    })
final class ReportCommand implements Callable<Integer> {
  private static final int FULL_ENTRIES = 60;

  @Parameters(arity = "1..*", paramLabel = "FOLDER", description = "folder of frames, or files")
  private List<Path> inputs;

  @Option(names = "--out", paramLabel = "DIR", description = "where the results go")
  private Path out;

  @Option(names = "--focal-length", paramLabel = "MM", description = "actual focal length, mm")
  private Double focalLengthMm;

  @Option(names = "--focal-length-35", paramLabel = "MM", description = "35 mm equivalent, mm")
  private Double focalLength35Mm;

  @Option(names = "--pixel-pitch", paramLabel = "UM", description = "distance of pixels, µm")
  private Double pixelPitchMicrons;

  @Option(names = "--exposure", paramLabel = "S", description = "exposure time, s")
  private Double exposureSeconds;

  @Option(names = "--aperture", paramLabel = "N", description = "f-number")
  private Double fNumber;

  @Option(names = "--iso", paramLabel = "ISO", description = "sensitivity")
  private Double iso;

  @Option(names = "--clock-shift", paramLabel = "CAMERA=±hh:mm:ss", description = "moves times")
  private List<String> clockShifts = List.of();

  @Option(names = "--page", defaultValue = "a4", description = "a4 or letter")
  private String page;

  @Option(names = "--wording", defaultValue = "student", description = "student or teacher")
  private String wording;

  @Option(names = "--entries", defaultValue = "auto", description = "auto, all or none")
  private String entries;

  @Option(names = "--templates", paramLabel = "DIR", description = "your own report templates")
  private Path templates;

  @Option(names = "--workers", description = "worker processes; default one per core")
  private Integer workers;

  @Option(names = "--star-table", description = "also write stars.csv.gz")
  private boolean starTable;

  @Override
  public Integer call() throws InterruptedException {
    try {
      Request request = new Request(inputs, Optional.ofNullable(out));
      RunSummary summary = new Pipeline(request, settings(), new TerminalProgress()).run();
      tell(summary);
      return summary.unreadableCount() > 0 ? 1 : 0;
    } catch (CommandProblem | OutputProblem | IllegalArgumentException e) {
      System.err.println(e.getMessage());
      return 2;
    } catch (IOException e) {
      System.err.println("No report could be made: " + e.getMessage());
      return 3;
    }
  }

  private Settings settings() {
    GivenFacts given =
        new GivenFacts(
            Optional.ofNullable(exposureSeconds),
            Optional.ofNullable(fNumber),
            Optional.ofNullable(iso),
            Optional.ofNullable(focalLengthMm),
            Optional.ofNullable(focalLength35Mm),
            Optional.ofNullable(pixelPitchMicrons),
            clockShifts);
    ReportSettings report =
        new ReportSettings(
            choice(ReportSettings.PageSize.class, "--page", page),
            choice(ReportSettings.Voice.class, "--wording", wording),
            Optional.ofNullable(templates),
            choice(ReportSettings.Entries.class, "--entries", entries),
            FULL_ENTRIES,
            Main.VERSION,
            Settings.shownDefaults());
    return Settings.of(given, report, Optional.ofNullable(workers), starTable);
  }

  private static <T extends Enum<T>> T choice(Class<T> kind, String option, String text) {
    try {
      return Enum.valueOf(kind, text.toUpperCase(Locale.ROOT));
    } catch (IllegalArgumentException e) {
      String choices =
          String.join(
              ", ",
              java.util.Arrays.stream(kind.getEnumConstants())
                  .map(constant -> constant.name().toLowerCase(Locale.ROOT))
                  .toList());
      throw new IllegalArgumentException(
          option + " takes one of " + choices + "; found " + text + ".");
    }
  }

  private static void tell(RunSummary summary) {
    List<NightFrame> frames = summary.book().frames();
    long measured = frames.stream().filter(frame -> frame.shape().isPresent()).count();
    long keep =
        frames.stream().filter(frame -> frame.grade().equals(Optional.of(Grade.KEEP))).count();
    System.out.printf(
        Locale.ROOT,
        "%d frames: %d measured, %d to keep, %d unreadable.%n",
        frames.size(),
        measured,
        keep,
        summary.unreadableCount());
    System.out.println("Report: " + summary.outputFolder().resolve("report.pdf"));
    System.out.println("File names are printed in the report as they are; mind that when sharing.");
  }
}
