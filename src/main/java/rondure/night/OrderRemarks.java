package rondure.night;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import rondure.intake.CaptureTime;

/** Remarks on frames whose names tell another order than their clocks; the clocks decide. */
final class OrderRemarks {
  /** A camera's folder: three digits, then letters or digits of its own (JEITA CP-3461, DCF). */
  private static final Pattern CAMERA_FOLDER = Pattern.compile("(?:.*/)?(\\d{3})[A-Za-z0-9_]{5}/");

  /** A name that ends in its number. */
  private static final Pattern NUMBERED = Pattern.compile("((?:.*/)?)([^/]*?)(\\d{1,9})\\.[^./]+");

  /** After 9999 a camera counts from 1 again (DCF names hold four digits). */
  private static final long LAST_NUMBER = 9999;

  private OrderRemarks() {}

  /**
   * @param shots in the order of the book
   */
  static List<String> on(List<Shot> shots) {
    List<String> notes = new ArrayList<>();
    Map<String, List<Shot>> series = new TreeMap<>();
    for (Shot shot : shots) {
      Matcher name = NUMBERED.matcher(shot.exposure().file());
      if (shot.startSeconds().isPresent() && name.matches()) {
        String folder = CAMERA_FOLDER.matcher(name.group(1)).replaceFirst("");
        String key = shot.cameraName() + "\n" + folder + "\n" + name.group(2);
        series.computeIfAbsent(key, k -> new ArrayList<>()).add(shot);
      }
    }
    series.values().forEach(one -> numbers(one).ifPresent(notes::add));
    shots.stream()
        .collect(Collectors.groupingBy(Shot::cameraName, TreeMap::new, Collectors.toList()))
        .values()
        .forEach(ofCamera -> folders(ofCamera).ifPresent(notes::add));
    offsets(shots).ifPresent(notes::add);
    return notes;
  }

  /** Files of one camera and one way of naming, by time: do their numbers grow? */
  private static Optional<String> numbers(List<Shot> shots) {
    long[] numbers = shots.stream().mapToLong(shot -> number(shot.exposure().file())).toArray();
    long turned = 0;
    for (int i = 1; i < numbers.length; i++) {
      long before = numbers[i - 1] - turned;
      boolean wraps = before > LAST_NUMBER - 100 && before <= LAST_NUMBER && numbers[i] < 100;
      turned += wraps ? LAST_NUMBER : 0;
      numbers[i] += turned;
    }
    int astray = numbers.length - longestGrowing(numbers);
    if (astray == 0) {
      return Optional.empty();
    }
    int first = firstFall(numbers);
    return Optional.of(
        String.format(
            Locale.ROOT,
            "%s: clock times and file numbers disagree for %d of %d frames (%s comes before %s by"
                + " the clock); the clock decided the order. If the clock was set during the night,"
                + " give the frames before and after in two runs.",
            shots.get(0).cameraName(),
            astray,
            numbers.length,
            shots.get(first - 1).exposure().file(),
            shots.get(first).exposure().file()));
  }

  /** Folders of one camera that the clock goes back to after it had left them. */
  private static Optional<String> folders(List<Shot> shots) {
    Set<String> left = new HashSet<>();
    String last = "";
    for (Shot shot : shots) {
      String file = shot.exposure().file();
      String folder = file.substring(0, file.lastIndexOf('/') + 1);
      if (shot.startSeconds().isEmpty()) {
        continue;
      }
      if (!folder.equals(last) && left.contains(folder)) {
        return Optional.of(
            String.format(
                Locale.ROOT,
                "%s: by the clock frames of the folders \"%s\" and \"%s\" alternate; they are in the"
                    + " order of the clock.",
                shot.cameraName(),
                folder.isEmpty() ? "." : folder,
                last.isEmpty() ? "." : last));
      }
      left.add(folder);
      last = folder;
    }
    return Optional.empty();
  }

  private static int firstFall(long[] numbers) {
    int i = 1;
    while (i < numbers.length - 1 && numbers[i] >= numbers[i - 1]) {
      i++;
    }
    return i;
  }

  /** The number of the camera's folder goes before that of the file. */
  private static long number(String file) {
    Matcher name = NUMBERED.matcher(file);
    if (!name.matches()) {
      throw new IllegalArgumentException(file + " has no number");
    }
    Matcher folder = CAMERA_FOLDER.matcher(name.group(1));
    long hundreds = folder.matches() ? Long.parseLong(folder.group(1)) : 0;
    return hundreds * 1_000_000_000L + Long.parseLong(name.group(3));
  }

  /** Length of the longest part that never falls (patience sorting). */
  static int longestGrowing(long[] numbers) {
    List<Long> ends = new ArrayList<>();
    for (long number : numbers) {
      int low = 0;
      int high = ends.size();
      while (low < high) {
        int middle = (low + high) / 2;
        if (ends.get(middle) <= number) {
          low = middle + 1;
        } else {
          high = middle;
        }
      }
      if (low == ends.size()) {
        ends.add(number);
      } else {
        ends.set(low, number);
      }
    }
    return ends.size();
  }

  /** Clocks of different zones can be compared only where every file says its zone. */
  private static Optional<String> offsets(List<Shot> shots) {
    List<CaptureTime> times =
        shots.stream().flatMap(shot -> shot.facts().captureTime().stream()).toList();
    long distinct = times.stream().map(CaptureTime::offsetSeconds).distinct().count();
    if (distinct < 2) {
      return Optional.empty();
    }
    long without = times.stream().filter(time -> time.offsetSeconds().isEmpty()).count();
    return Optional.of(
        without == 0
            ? "The clocks were set to different time zones; frames are in the order of UTC."
            : String.format(
                Locale.ROOT,
                "%d of %d times do not say their time zone; frames are in the order of the clocks as"
                    + " they show (shift a camera's with --clock-shift).",
                without,
                times.size()));
  }
}
