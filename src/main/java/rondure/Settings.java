package rondure;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import rondure.crew.CrewSettings;
import rondure.intake.FactOverrides;
import rondure.night.EventSettings;
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
    rows.addAll(shownSorting(night));
    rows.addAll(shownGrades(night.grades()));
    rows.addAll(shownEvents(night.events()));
    return rows;
  }

  private static List<ShownSetting> shownSorting(NightSettings night) {
    return List.of(
        shown("nightGapHours", night.nightGapHours(), "A longer pause starts another night, h."),
        shown(
            "softFwhmPx",
            night.softFwhmPx(),
            "A scene whose sharpest frames are wider, px, gets a remark."),
        shown(
            "trailsIntendedPx",
            night.trailsIntendedPx(),
            "Longer trails, px, are taken for wanted."),
        shown(
            "trailsIntendedSeconds",
            night.trailsIntendedSeconds(),
            "Where the exposure is known, no shorter one, s, is taken for wanted trails."),
        shown(
            "panoramaAspect",
            night.panoramaAspect(),
            "Longer over shorter side from which a picture is a panorama."));
  }

  private static List<ShownSetting> shownEvents(EventSettings events) {
    return List.of(
        shown("falseAlarmRate", events.falseAlarmRate(), "Events by chance, for each frame."),
        shown("knockLeastPx", events.knockLeastPx(), "A knock: least jump of the camera, px."),
        shown(
            "reAimShare",
            events.reAimShare(),
            "A new aim: least jump, as a share of the longer side."),
        shown(
            "shakeWidening",
            events.shakeWidening(),
            "Wind or hand: least widening by the tripod, times."),
        shown("pauseRatio", events.pauseRatio(), "A pause: least wait over the usual one, times."),
        shown("droopPxPerMin", events.droopPxPerMin(), "A sagging camera: least speed, px/min."),
        shown(
            "focusPerHour", events.focusPerHour(), "Creeping focus: least growth, share an hour."),
        shown("focusStep", events.focusStep(), "Focus knocked: least step of the width, share."),
        shown("lossMag", events.lossMag(), "Dew or cloud: least loss of light, magnitudes."),
        shown("brighterMag", events.brighterMag(), "Brighter sky: least change, magnitudes."));
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
