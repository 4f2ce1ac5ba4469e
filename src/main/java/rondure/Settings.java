package rondure;

import java.util.Objects;
import rondure.crew.CrewSettings;
import rondure.intake.FactOverrides;
import rondure.night.NightSettings;
import rondure.report.ReportSettings;
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
}
