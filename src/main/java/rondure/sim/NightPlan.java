package rondure.sim;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Objects;

/**
 * Everything that makes a simulated night; read from and written to a JSON recipe.
 *
 * @param title what the night is about
 * @param seed of all randomness: same plan, same bytes
 * @param startLocalTime start of the first exposure, ISO 8601 without offset
 * @param utcOffsetMinutes minutes east of UTC of the camera's clock
 * @param camera the camera
 * @param lens the lens
 * @param aim where it looks at first
 * @param tracking whether the camera rides on a mount that follows the sky
 * @param sky the sky behind the stars
 * @param stars the stars
 * @param foreground the land
 * @param focusMicrons focus error at the sensor over the night
 * @param temperatureC air temperature over the night; empty: not recorded
 * @param shots the exposures in order
 * @param events what happens
 * @param files how frames are written
 */
public record NightPlan(
    String title,
    long seed,
    String startLocalTime,
    int utcOffsetMinutes,
    CameraPlan camera,
    LensPlan lens,
    AimPlan aim,
    boolean tracking,
    SkyPlan sky,
    StarPlan stars,
    ForegroundPlan foreground,
    List<TimePoint> focusMicrons,
    List<TimePoint> temperatureC,
    List<ShotGroup> shots,
    List<NightEvent> events,
    FilePlan files) {

  public NightPlan {
    title = Objects.requireNonNullElse(title, "");
    try {
      LocalDateTime.parse(Objects.requireNonNull(startLocalTime, "startLocalTime"));
    } catch (DateTimeParseException e) {
      throw new IllegalArgumentException(
          "startLocalTime must look like 2024-09-07T23:10:00, was " + startLocalTime, e);
    }
    Checks.within("utcOffsetMinutes", utcOffsetMinutes, -18 * 60, 18 * 60);
    Objects.requireNonNull(camera, "camera");
    Objects.requireNonNull(lens, "lens");
    Objects.requireNonNull(aim, "aim");
    Objects.requireNonNull(sky, "sky");
    Objects.requireNonNull(stars, "stars");
    foreground = Objects.requireNonNullElse(foreground, ForegroundPlan.NONE);
    focusMicrons = List.copyOf(Objects.requireNonNullElse(focusMicrons, List.of()));
    temperatureC = List.copyOf(Objects.requireNonNullElse(temperatureC, List.of()));
    shots = List.copyOf(Objects.requireNonNull(shots, "shots"));
    events = List.copyOf(Objects.requireNonNullElse(events, List.of()));
    files = Objects.requireNonNullElse(files, FilePlan.PLAIN);
    if (shots.isEmpty()) {
      throw new IllegalArgumentException("shots must name at least one exposure");
    }
  }

  /** Start of the first exposure by the camera's clock. */
  @JsonIgnore
  public LocalDateTime startTime() {
    return LocalDateTime.parse(startLocalTime);
  }

  /** Number of exposures in the night. */
  @JsonIgnore
  public int frameCount() {
    return shots.stream().mapToInt(ShotGroup::count).sum();
  }

  /** Image px at the centre for one radian: focal length over pixel pitch. */
  @JsonIgnore
  public double pixelsPerRadian() {
    return lens.focalLengthMm() * 1000 / camera.pixelPitchMicrons();
  }
}
