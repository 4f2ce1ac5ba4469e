package rondure.report.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Round values along an axis: steps of 1, 2 or 5 times a power of ten. */
final class NiceTicks {
  private static final int MOST = 100;

  private NiceTicks() {}

  /**
   * @param value where it stands
   * @param words as printed
   */
  record Tick(double value, String words) {}

  /** The least round step that makes at most so many steps of a range. */
  static double step(double range, int steps) {
    double least = range / steps;
    double power = Math.pow(10, Math.floor(Math.log10(least)));
    for (double digit : new double[] {1, 2, 5}) {
      if (digit * power >= least * (1 - 1e-9)) {
        return digit * power;
      }
    }
    return 10 * power;
  }

  /**
   * From {@code low} to {@code high}, both included where they are round.
   *
   * @param steps at most so many
   */
  static List<Tick> of(double low, double high, int steps) {
    double step = step(high - low, steps);
    int decimals = (int) Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
    List<Tick> ticks = new ArrayList<>();
    long first = (long) Math.ceil(low / step - 1e-9);
    for (long i = first; i * step <= high + 1e-9 * step && ticks.size() < MOST; i++) {
      double value = i == 0 ? 0 : i * step;
      ticks.add(new Tick(value, String.format(Locale.ROOT, "%." + decimals + "f", value)));
    }
    return ticks;
  }
}
