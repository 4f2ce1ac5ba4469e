package rondure.report.picture;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * What runs to the right under a course: the camera's clock, or the frames in their order.
 *
 * @param kind which of them
 * @param least smallest place that is drawn: milliseconds or frame number
 * @param most largest
 * @param label a word for the axis
 */
public record CourseAxis(Kind kind, double least, double most, String label) {
  private static final int[] ROUND_SECONDS = {
    1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 10800, 21600, 43200, 86400
  };
  private static final double LEAST_SPAN_MILLIS = 120_000;
  private static final double MARGIN_SHARE = 0.015;
  private static final double LABEL_APART = 58;
  private static final int MINUTE = 60;

  /** What runs to the right. */
  public enum Kind {
    /** Milliseconds of the camera's clock, shown as hours and minutes. */
    TIME,
    /** Frame numbers. */
    ORDER
  }

  public CourseAxis {
    if (!(most >= least)) {
      throw new IllegalArgumentException("most must be >= least, was " + most);
    }
  }

  private double margin() {
    double span = most - least;
    double lacking = kind == Kind.TIME ? LEAST_SPAN_MILLIS - span : 1;
    return Math.max(MARGIN_SHARE * span, lacking / 2);
  }

  /** Place in pixels of a value, on an axis that is so wide. */
  double x(double value, double width) {
    double from = least - margin();
    return (value - from) / (most - least + 2 * margin()) * width;
  }

  /** Round times or numbers, far enough apart for their words. */
  List<NiceTicks.Tick> ticks(double width) {
    int steps = (int) Math.max(1, width / LABEL_APART);
    double low = least - margin();
    double high = most + margin();
    if (kind == Kind.ORDER) {
      double step = Math.max(1, NiceTicks.step(high - low, steps));
      return ticks(Math.max(least, low), high, step, "");
    }
    double wanted = (high - low) / 1000 / steps;
    for (int seconds : ROUND_SECONDS) {
      if (seconds >= wanted) {
        return ticks(low, high, 1000.0 * seconds, seconds < MINUTE ? "HH:mm:ss" : "HH:mm");
      }
    }
    return ticks(low, high, 1000.0 * NiceTicks.step((high - low) / 1000, steps), "d MMM");
  }

  private static List<NiceTicks.Tick> ticks(double low, double high, double step, String clock) {
    List<NiceTicks.Tick> ticks = new ArrayList<>();
    for (double at = Math.ceil(low / step) * step; at <= high; at += step) {
      ticks.add(new NiceTicks.Tick(at, words(at, clock)));
    }
    return ticks;
  }

  private static String words(double at, String clock) {
    return clock.isEmpty()
        ? Long.toString(Math.round(at))
        : DateTimeFormatter.ofPattern(clock, Locale.ENGLISH)
            .format(Instant.ofEpochMilli(Math.round(at)).atOffset(ZoneOffset.UTC));
  }
}
