package rondure;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import rondure.crew.CrewSettings;
import rondure.intake.FactOverrides;
import rondure.night.GradeSettings;
import rondure.night.NightSettings;
import rondure.night.UseSettings;
import rondure.report.ReportSettings;
import rondure.report.ShownSetting;
import rondure.stars.StarSettings;

/**
 * Every stage's settings.
 *
 * @param overrides facts given by the user
 * @param crew worker processes
 * @param stars finding and measuring
 * @param night statuses and grades
 * @param report pages
 * @param starTable whether to write stars.csv.gz
 */
public record Settings(
    FactOverrides overrides,
    CrewSettings crew,
    StarSettings stars,
    NightSettings night,
    ReportSettings report,
    boolean starTable) {
  public Settings {
    Objects.requireNonNull(overrides, "overrides");
    Objects.requireNonNull(crew, "crew");
    Objects.requireNonNull(stars, "stars");
    Objects.requireNonNull(night, "night");
    Objects.requireNonNull(report, "report");
  }

  /**
   * The defaults with what the user gave.
   *
   * @throws IllegalArgumentException when a value makes no sense
   */
  public static Settings of(
      GivenFacts given, ReportSettings report, Optional<Integer> workers, boolean starTable) {
    List<ShownSetting> rows = new ArrayList<>(report.settingRows());
    rows.addAll(given.shown());
    CrewSettings crew = CrewSettings.defaults();
    return new Settings(
        given.overrides(),
        workers.map(crew::withWorkers).orElse(crew),
        StarSettings.defaults(),
        NightSettings.defaults(),
        report.withSettingRows(rows),
        starTable);
  }

  /** The same with other statuses and grades. */
  public Settings withNight(NightSettings other) {
    return new Settings(overrides, crew, stars, other, report, starTable);
  }

  /** The measuring settings as the report and night.json show them. */
  public static List<ShownSetting> shownDefaults() {
    return shown(NightSettings.defaults());
  }

  /** The same with other statuses and grades. */
  public static List<ShownSetting> shown(NightSettings night) {
    StarSettings stars = StarSettings.defaults();
    List<ShownSetting> rows =
        new ArrayList<>(
            List.of(
                shown("meshPx", stars.meshPx(), "Side of a background mesh cell, px."),
                shown("detectionSnr", stars.detectionSnr(), "Least signal-to-noise to be found."),
                shown("shapeSnr", stars.shapeSnr(), "Least signal-to-noise for a star's shape."),
                shown("shapeStarsMax", stars.shapeStarsMax(), "Most stars measured in a frame."),
                shown("leastStars", night.leastStars(), "Fewer measured stars give no verdict."),
                shown(
                    "widestCorePx",
                    night.widestCorePx(),
                    "A scene out of focus whose sharpest frames are wider, px, has nothing to keep.")));
    rows.addAll(shownGrades(night.grades()));
    return rows;
  }

  private static List<ShownSetting> shownGrades(GradeSettings grades) {
    UseSettings uses = grades.uses();
    return List.of(
        shown(
            "keepWidthRatio",
            grades.keepWidthRatio(),
            "Keep: most width over the sharpest tenth of the scene."),
        shown("keepRoundness", grades.keepRoundness(), "Keep: least roundness b/a."),
        shown(
            "asideWidthRatio",
            grades.asideWidthRatio(),
            "Set aside: wider than this over the sharpest tenth."),
        shown("asideRoundness", grades.asideRoundness(), "Set aside: roundness b/a below this."),
        shown("pointFwhmPx", uses.pointFwhmPx(), "A point: most width of its long side, px."),
        shown("pointAxisRatio", uses.pointAxisRatio(), "A point: most length over width, a/b."),
        shown("pointSkyShare", uses.pointSkyShare(), "Share of the sky where stars are points."),
        shown(
            "screenLongSidePx",
            uses.screenLongSidePx(),
            "Screen: longer side of a picture that fills it, px; 3840 is 4K."),
        shown(
            "webLongSidePx",
            uses.webLongSidePx(),
            "Web page: longer side of a picture, px; half its own for smaller ones."));
  }

  private static ShownSetting shown(String name, double value, String meaning) {
    return new ShownSetting(name, ShownSetting.spelled(value), meaning);
  }
}
