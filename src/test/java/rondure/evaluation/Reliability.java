package rondure.evaluation;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import rondure.blur.Cause;

/**
 * How often the likeliest cause was right, by how likely it was said to be; causes weigh alike.
 * Haze that no frame shown is clear of cannot be told and is left out, unless all are asked for.
 */
final class Reliability {
  static final int BINS = 7;
  static final double LOWEST = 0.3;

  /**
   * One bin.
   *
   * @param frames in it
   * @param confidence mean said, weighted
   * @param right share right, weighted
   * @param error standard error of that share, nights counted: frames of one night fail together
   */
  record Bin(int frames, double confidence, double right, double error) {}

  private final List<Scored> scored;
  private final Map<Cause, Double> weights = new EnumMap<>(Cause.class);

  Reliability(List<Scored> scored) {
    this(scored, false);
  }

  /**
   * @param all with haze that cannot be told
   */
  Reliability(List<Scored> scored, boolean all) {
    this.scored =
        scored.stream().filter(s -> s.verdict().isPresent() && (all || s.tellable())).toList();
    for (Cause cause : Cause.values()) {
      long count = this.scored.stream().filter(s -> s.answer().cause() == cause).count();
      weights.put(cause, count == 0 ? 0.0 : 1.0 / count);
    }
  }

  /** Bins of equal width from 0.3 to 1; empty ones with no frames. */
  List<Bin> bins() {
    List<Bin> bins = new ArrayList<>();
    double width = (1 - LOWEST) / BINS;
    for (int i = 0; i < BINS; i++) {
      double low = i == 0 ? 0 : LOWEST + i * width;
      double high = i == BINS - 1 ? 1.01 : LOWEST + (i + 1) * width;
      bins.add(
          bin(scored.stream().filter(s -> confidence(s) >= low && confidence(s) < high).toList()));
    }
    return bins;
  }

  private static double confidence(Scored s) {
    return s.verdict().orElseThrow().confidence();
  }

  private static boolean likeliestIsTrue(Scored s) {
    Map<Cause, Double> p = s.verdict().orElseThrow().probabilities();
    return p.get(s.answer().cause()) >= confidence(s) - 1e-12;
  }

  private Bin bin(List<Scored> members) {
    double weight = sum(members, s -> 1);
    if (weight == 0) {
      return new Bin(0, 0, 0, 0);
    }
    double share = sum(members, s -> likeliestIsTrue(s) ? 1 : 0) / weight;
    double squares = 0;
    double off = 0;
    for (List<Scored> night :
        members.stream().collect(Collectors.groupingBy(Scored::night)).values()) {
      squares += Math.pow(sum(night, s -> 1), 2);
      off += Math.pow(sum(night, s -> (likeliestIsTrue(s) ? 1 : 0) - share), 2);
    }
    // Where none or all were right: half a night of those that count.
    double least = 0.25 * Math.pow(squares / (weight * weight), 2);
    return new Bin(
        members.size(),
        sum(members, Reliability::confidence) / weight,
        share,
        Math.sqrt(Math.max(least, off / (weight * weight))));
  }

  private double sum(List<Scored> members, ToDoubleFunction<Scored> value) {
    return members.stream()
        .mapToDouble(s -> weights.get(s.answer().cause()) * value.applyAsDouble(s))
        .sum();
  }

  /** Share of frames that are decided, causes weighing alike. */
  double decided() {
    return sum(scored, s -> s.verdict().orElseThrow().cause().isPresent() ? 1 : 0)
        / sum(scored, s -> 1);
  }

  /** Mean Brier score over the causes, 0 = perfect, 0.83 = all alike. */
  double brier() {
    return scored.isEmpty() ? 0 : sum(scored, Scored::brier) / sum(scored, s -> 1);
  }

  String table() {
    StringBuilder text = new StringBuilder("frames, said, right, error\n");
    for (Bin bin : bins()) {
      text.append(
          String.format(
              Locale.ROOT,
              "%4d  %.2f  %.2f  ±%.2f%n",
              bin.frames(),
              bin.confidence(),
              bin.right(),
              bin.error()));
    }
    return text.append(
            String.format(Locale.ROOT, "Brier score %.3f, decided %.2f%n", brier(), decided()))
        .toString();
  }
}
