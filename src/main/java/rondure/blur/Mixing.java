package rondure.blur;

import java.util.EnumMap;
import java.util.Map;

/** Mixtures of probabilities over the causes. */
final class Mixing {
  private Mixing() {}

  /** The first with this share, the second with the rest. */
  static Map<Cause, Double> mix(Map<Cause, Double> one, double share, Map<Cause, Double> two) {
    Map<Cause, Double> mixed = new EnumMap<>(Cause.class);
    one.forEach((cause, p) -> mixed.put(cause, share * p + (1 - share) * two.get(cause)));
    return mixed;
  }

  /** Every cause alike. */
  static Map<Cause, Double> even() {
    Map<Cause, Double> even = new EnumMap<>(Cause.class);
    for (Cause cause : Cause.values()) {
      even.put(cause, 1.0 / Cause.values().length);
    }
    return even;
  }

  /** One cause for certain. */
  static Map<Cause, Double> certain(Cause only) {
    Map<Cause, Double> certain = new EnumMap<>(Cause.class);
    for (Cause cause : Cause.values()) {
      certain.put(cause, cause == only ? 1.0 : 0.0);
    }
    return certain;
  }
}
