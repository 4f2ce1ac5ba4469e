package rondure.night;

import java.util.Objects;

/**
 * Settings of sorting and grading a night.
 *
 * @param nightGapHours [6] a longer gap starts another night: longer than a meal, shorter than a
 *     day
 * @param leastStars [8] fewer measured stars give no width worth the name
 * @param grades limits of the grades
 * @param events what counts as an event
 * @param widestCorePx [5] no lens draws a sharp star wider (fast lenses give 1.5 to 3 px, common
 *     practice): a scene whose sharpest frames are wider and called out of focus has none to keep
 * @param trailsIntendedPx [60] a longer trail is wanted, or beyond what is measured as a star
 * @param trailsIntendedSeconds [60] no shorter exposure is taken for deliberate trails
 * @param panoramaAspect [2.2] longer over shorter side from which a frame counts as a panorama: no
 *     common sensor or film format in everyday use is longer than 2:1
 * @param softFwhmPx [3.3] scenes whose sharpest frames are wider get a remark
 */
public record NightSettings(
    double nightGapHours,
    int leastStars,
    GradeSettings grades,
    EventSettings events,
    double widestCorePx,
    double trailsIntendedPx,
    double trailsIntendedSeconds,
    double panoramaAspect,
    double softFwhmPx) {

  public NightSettings {
    requirePositive("nightGapHours", nightGapHours);
    requirePositive("leastStars", leastStars);
    requirePositive("widestCorePx", widestCorePx);
    requirePositive("trailsIntendedPx", trailsIntendedPx);
    requirePositive("trailsIntendedSeconds", trailsIntendedSeconds);
    requirePositive("softFwhmPx", softFwhmPx);
    Objects.requireNonNull(grades, "grades");
    Objects.requireNonNull(events, "events");
    if (!(panoramaAspect > 1)) {
      throw new IllegalArgumentException("panoramaAspect must be > 1, was " + panoramaAspect);
    }
  }

  public static NightSettings defaults() {
    return new NightSettings(
        6, 8, GradeSettings.defaults(), EventSettings.defaults(), 5, 60, 60, 2.2, 3.3);
  }

  /** The same with other limits of the grades. */
  public NightSettings withGrades(GradeSettings other) {
    return new NightSettings(
        nightGapHours,
        leastStars,
        other,
        events,
        widestCorePx,
        trailsIntendedPx,
        trailsIntendedSeconds,
        panoramaAspect,
        softFwhmPx);
  }

  private static void requirePositive(String name, double value) {
    if (!(value > 0)) {
      throw new IllegalArgumentException(name + " must be > 0, was " + value);
    }
  }
}
