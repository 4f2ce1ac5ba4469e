package rondure.intake;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What to add to the times of one camera.
 *
 * @param camera the camera's model name or a part of it
 * @param shift positive when the camera's clock was slow
 */
public record ClockShift(String camera, Duration shift) {
  private static final Pattern SYNTAX =
      Pattern.compile("(.+)=([+\\-\u2212])(\\d{1,5}):([0-5]\\d):([0-5]\\d)");

  public ClockShift {
    if (camera.isBlank()) {
      throw new IllegalArgumentException("a clock shift needs the name of a camera");
    }
    Objects.requireNonNull(shift, "shift");
  }

  /**
   * Several shifts by camera name.
   *
   * @throws IllegalArgumentException for people, when one has another form or a camera has two
   */
  public static Map<String, Duration> parseAll(List<String> texts) {
    Map<String, Duration> byCamera = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
    for (String text : texts) {
      ClockShift one = parse(text);
      if (byCamera.put(one.camera(), one.shift()) != null) {
        throw new IllegalArgumentException(
            "the camera \"" + one.camera() + "\" was given two clock shifts; give it one.");
      }
    }
    return byCamera;
  }

  /**
   * Reads {@code CAMERA=±hh:mm:ss}.
   *
   * @throws IllegalArgumentException for people, when the text has another form
   */
  public static ClockShift parse(String text) {
    Matcher parts = SYNTAX.matcher(text.strip());
    if (!parts.matches() || parts.group(1).isBlank()) {
      throw new IllegalArgumentException(
          "a clock shift is written CAMERA=+hh:mm:ss or CAMERA=-hh:mm:ss, for example"
              + " \"Model X=-01:00:00\" for a clock that was an hour fast; found \""
              + text
              + "\".");
    }
    Duration size =
        Duration.ofHours(Long.parseLong(parts.group(3)))
            .plusMinutes(Long.parseLong(parts.group(4)))
            .plusSeconds(Long.parseLong(parts.group(5)));
    boolean forward = parts.group(2).equals("+");
    return new ClockShift(parts.group(1).strip(), forward ? size : size.negated());
  }
}
