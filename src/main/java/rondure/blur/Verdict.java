package rondure.blur;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What softened a frame, how sure that is, and why.
 *
 * @param cause the likely cause; empty = undecided (largest probability below 0.6)
 * @param probabilities over all causes, summing to 1
 * @param undecidedBetween the two likeliest when undecided, else empty
 * @param evidence what was seen, most important first
 */
public record Verdict(
    Optional<Cause> cause,
    Map<Cause, Double> probabilities,
    List<Cause> undecidedBetween,
    List<Evidence> evidence) {

  /** Below this the verdict is undecided. */
  public static final double DECIDED_FROM = 0.6;

  public Verdict {
    probabilities = Map.copyOf(probabilities);
    undecidedBetween = List.copyOf(undecidedBetween);
    evidence = List.copyOf(evidence);
    double sum = probabilities.values().stream().mapToDouble(p -> p).sum();
    if (!(Math.abs(sum - 1) < 1e-6) || probabilities.size() != Cause.values().length) {
      throw new IllegalArgumentException(
          "probabilities must cover all causes and sum to 1, were " + probabilities);
    }
  }

  /**
   * The verdict that follows from the probabilities: the likeliest cause if it is likely enough.
   */
  public static Verdict of(Map<Cause, Double> probabilities, List<Evidence> evidence) {
    List<Cause> ranked =
        probabilities.keySet().stream()
            .sorted(Comparator.comparing((Cause c) -> -probabilities.get(c)).thenComparing(c -> c))
            .toList();
    boolean decided = probabilities.get(ranked.get(0)) >= DECIDED_FROM;
    return new Verdict(
        decided ? Optional.of(ranked.get(0)) : Optional.empty(),
        probabilities,
        decided ? List.of() : ranked.subList(0, 2),
        evidence);
  }

  /** True when this was among what was seen. */
  public boolean saw(Evidence.Kind kind) {
    return evidence.stream().anyMatch(seen -> seen.kind() == kind);
  }

  /** The largest probability. */
  public double confidence() {
    return probabilities.values().stream().mapToDouble(p -> p).max().orElse(0);
  }
}
