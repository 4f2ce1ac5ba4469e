package rondure.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Option;
import rondure.report.ReportSettings;
import rondure.report.ReportSettings.Entries;
import rondure.report.ReportSettings.PageSize;
import rondure.report.ReportSettings.Voice;
import rondure.report.ShownSetting;

/** How the report is to look. */
final class PageOptions {
  private static final int FULL_ENTRIES = 60;

  @Option(names = "--page", description = "paper: a4 (as it is) or letter")
  private PageSize page = PageSize.A4;

  @Option(names = "--wording", description = "student (as it is) or teacher: with all numbers")
  private Voice wording = Voice.STUDENT;

  @Option(
      names = "--entries",
      description = "full entries for the frames worth it: auto (as it is); all; none")
  private Entries entries = Entries.AUTO;

  @Option(names = "--templates", paramLabel = "DIR", description = "your own report templates")
  private Path templates;

  ReportSettings settings(List<ShownSetting> rows) {
    return new ReportSettings(
        page, wording, Optional.ofNullable(templates), entries, FULL_ENTRIES, Main.VERSION, rows);
  }
}
