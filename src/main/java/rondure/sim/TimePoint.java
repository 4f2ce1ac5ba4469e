package rondure.sim;

import java.util.List;

/**
 * A value at a time of the night; between points it changes linearly, outside it stays.
 *
 * @param minutes since the first exposure began
 * @param value in the unit of the list's name
 */
public record TimePoint(double minutes, double value) {

  public TimePoint {
    Checks.finite("minutes", minutes);
    Checks.finite("value", value);
  }

  /** The value at a time; {@code otherwise} for an empty list. Points must be in time order. */
  static double at(List<TimePoint> points, double minutes, double otherwise) {
    if (points.isEmpty()) {
      return otherwise;
    }
    TimePoint before = points.get(0);
    for (TimePoint after : points) {
      if (after.minutes >= minutes) {
        double span = after.minutes - before.minutes;
        double share = span > 0 ? Math.max(0, (minutes - before.minutes) / span) : 0;
        return before.value + share * (after.value - before.value);
      }
      before = after;
    }
    return before.value;
  }
}
