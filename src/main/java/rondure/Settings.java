package rondure;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import rondure.crew.CrewSettings;
import rondure.intake.FactOverrides;
import rondure.intake.ReadingLimits;
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

  /** The same with pictures of up to so many megapixels. */
  public Settings withLargestFrame(double megapixels) {
    ReadingLimits limits = ReadingLimits.defaults().withMegapixels(megapixels);
    return new Settings(overrides, crew.withLimits(limits), stars, night, report, starTable);
  }

  /** The measuring settings as the report and night.json show them. */
  public static List<ShownSetting> shownDefaults() {
    return shown(NightSettings.defaults(), ReadingLimits.defaults().megapixels());
  }

  /** The same with other statuses and grades, and pictures of up to so many megapixels. */
  public static List<ShownSetting> shown(NightSettings night, double largestFrame) {
    StarSettings stars = StarSettings.defaults();
    List<ShownSetting> rows =
        new ArrayList<>(
            List.of(
                shown(
                    "largestFrameMegapixels",
                    largestFrame,
                    "A picture of more megapixels is not read."),
                shown(
                    "meshPx",
                    stars.meshPx(),
                    "The sky's brightness is read in squares of this side, px."),
                shown(
                    "detectionSnr",
                    stars.detectionSnr(),
                    "A star is found from this signal-to-noise on."),
                shown(
                    "shapeSnr",
                    stars.shapeSnr(),
                    "A star's shape is measured from this signal-to-noise on."),
                shown(
                    "shapeStarsMax",
                    stars.shapeStarsMax(),
                    "At most so many stars are measured in a frame."),
                shown(
                    "leastStars", night.leastStars(), "A frame with fewer stars gets no verdict."),
                shown(
                    "widestCorePx",
                    night.widestCorePx(),
                    "In a scene out of focus nothing is kept if its sharpest stars are wider, px.")));
    rows.addAll(shownSorting(night));
    rows.addAll(shownGrades(night.grades()));
    rows.addAll(shownEvents(night.events()));
    return rows;
  }

  private static List<ShownSetting> shownSorting(NightSettings night) {
    return List.of(
        shown(
            "nightGapHours", night.nightGapHours(), "A longer pause starts another night, hours."),
        shown(
            "softFwhmPx",
            night.softFwhmPx(),
            "A scene gets a remark if its sharpest stars are wider, px."),
        shown(
            "trailsIntendedPx",
            night.trailsIntendedPx(),
            "Longer trails, px, count as made on purpose."),
        shown(
            "trailsIntendedSeconds",
            night.trailsIntendedSeconds(),
            "Trails of a shorter exposure, s, do not count as made on purpose."),
        shown(
            "panoramaAspect",
            night.panoramaAspect(),
            "A picture is a panorama if it is so many times as long as high."));
  }

  private static List<ShownSetting> shownEvents(EventSettings events) {
    return List.of(
        shown(
            "falseAlarmRate",
            events.falseAlarmRate(),
            "How often chance alone may look like an event, for each frame."),
        shown(
            "knockLeastPx",
            events.knockLeastPx(),
            "A knock moves the camera by at least this, px."),
        shown(
            "reAimShare",
            events.reAimShare(),
            "A new aim turns the camera by at least this share of the longer side."),
        shown(
            "shakeWidening",
            events.shakeWidening(),
            "Wind or a hand makes stars at least so many times as wide."),
        shown(
            "pauseRatio",
            events.pauseRatio(),
            "A pause is so many times as long as the usual wait between frames."),
        shown(
            "droopPxPerMin",
            events.droopPxPerMin(),
            "A sagging camera moves at least so fast, px a minute."),
        shown(
            "focusPerHour",
            events.focusPerHour(),
            "Creeping focus makes stars grow by at least this share an hour."),
        shown(
            "focusStep",
            events.focusStep(),
            "A knocked focus changes the width by at least this share."),
        shown(
            "lossMag", events.lossMag(), "Dew or cloud takes at least so much light, magnitudes."),
        shown(
            "brighterMag",
            events.brighterMag(),
            "A brighter sky is at least so much brighter, magnitudes."));
  }

  private static List<ShownSetting> shownGrades(GradeSettings grades) {
    UseSettings uses = grades.uses();
    return List.of(
        shown(
            "keepWidthRatio",
            grades.keepWidthRatio(),
            "Keep asks for stars at most so many times as wide as the sharpest tenth."),
        shown(
            "keepRoundness", grades.keepRoundness(), "Keep asks for at least this roundness, b/a."),
        shown(
            "asideWidthRatio",
            grades.asideWidthRatio(),
            "Set aside are stars more than so many times as wide as the sharpest tenth."),
        shown(
            "asideRoundness",
            grades.asideRoundness(),
            "Set aside are stars with less than this roundness, b/a."),
        shown(
            "pointFwhmPx",
            uses.pointFwhmPx(),
            "A star is a point if its long axis is at most so wide, px."),
        shown(
            "pointAxisRatio",
            uses.pointAxisRatio(),
            "A star is a point if it is at most so many times as long as wide."),
        shown(
            "pointSkyShare",
            uses.pointSkyShare(),
            "Stars must be points over this share of the sky."),
        shown(
            "screenLongSidePx",
            uses.screenLongSidePx(),
            "A picture that fills the screen has this longer side, px."),
        shown(
            "webLongSidePx",
            uses.webLongSidePx(),
            "A picture on a web page has this longer side, px, or half its own if that is less."));
  }

  private static ShownSetting shown(String name, double value, String meaning) {
    return new ShownSetting(name, ShownSetting.spelled(value), meaning);
  }
}
