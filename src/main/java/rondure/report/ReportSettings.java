package rondure.report;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * How the report is to look, and what it says about the program.
 *
 * @param pageSize paper
 * @param voice who is spoken to
 * @param templatesFolder the user's templates, which go before the program's own
 * @param entries which frames get a full entry
 * @param fullEntriesUpTo with {@link Entries#AUTO}: sets up to this size give every measured frame
 *     a full entry, larger ones at most this many [60]: keeps a night under 40 pages
 * @param softwareVersion printed in the report, for instance "0.1.0"
 * @param settingRows settings of the whole program, printed under "How this was measured"
 */
public record ReportSettings(
    PageSize pageSize,
    Voice voice,
    Optional<Path> templatesFolder,
    Entries entries,
    int fullEntriesUpTo,
    String softwareVersion,
    List<ShownSetting> settingRows) {

  /** Paper. */
  public enum PageSize {
    A4,
    LETTER
  }

  /** Who is spoken to; each has its wording file among the templates. */
  public enum Voice {
    /** Plain and short. */
    STUDENT,
    /** With all numbers. */
    TEACHER
  }

  /** Which measured frames get a full entry; the others get a table row. */
  public enum Entries {
    AUTO,
    ALL,
    NONE
  }

  public ReportSettings {
    Objects.requireNonNull(pageSize, "pageSize");
    Objects.requireNonNull(voice, "voice");
    Objects.requireNonNull(templatesFolder, "templatesFolder");
    Objects.requireNonNull(entries, "entries");
    Objects.requireNonNull(softwareVersion, "softwareVersion");
    if (fullEntriesUpTo < 1) {
      throw new IllegalArgumentException("fullEntriesUpTo must be >= 1, was " + fullEntriesUpTo);
    }
    settingRows = List.copyOf(settingRows);
  }

  /** The same with other rows of settings. */
  public ReportSettings withSettingRows(List<ShownSetting> rows) {
    return new ReportSettings(
        pageSize, voice, templatesFolder, entries, fullEntriesUpTo, softwareVersion, rows);
  }

  /** A4, for a student, the program's templates, 60 full entries. */
  public static ReportSettings defaults(String softwareVersion, List<ShownSetting> settingRows) {
    return new ReportSettings(
        PageSize.A4,
        Voice.STUDENT,
        Optional.empty(),
        Entries.AUTO,
        60,
        softwareVersion,
        settingRows);
  }
}
