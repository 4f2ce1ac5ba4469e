package rondure.evaluation;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import rondure.base.RobustStats;
import rondure.blur.Budget;
import rondure.blur.Cause;

/** Scores as text. */
final class ScoreTable {
  private final List<Scored> scored;

  ScoreTable(List<Scored> scored) {
    this.scored = scored;
  }

  /** Rows of kinds: how many frames, and how they fared, %. */
  String kinds() {
    StringBuilder text =
        new StringBuilder("kind, true cause: frames | right undecided astray wrong unmeasured %\n");
    for (FrameAnswer.Kind kind : FrameAnswer.Kind.values()) {
      List<Scored> ofKind = scored.stream().filter(s -> s.answer().kind() == kind).toList();
      text.append(row(kind.name(), ofKind));
      if (kind == FrameAnswer.Kind.CLEAR) {
        for (Cause cause : Cause.values()) {
          text.append(
              row("  " + cause, ofKind.stream().filter(s -> s.answer().cause() == cause).toList()));
        }
        text.append(row("  8-bit", ofKind.stream().filter(Scored::developed).toList()));
      }
    }
    return text.append(row("ALL", scored)).toString();
  }

  private static String row(String name, List<Scored> rows) {
    if (rows.isEmpty()) {
      return "";
    }
    Map<Scored.Result, Integer> counts = new EnumMap<>(Scored.Result.class);
    rows.forEach(s -> counts.merge(s.result(), 1, Integer::sum));
    StringBuilder text =
        new StringBuilder(String.format(Locale.ROOT, "%-12s %4d |", name, rows.size()));
    for (Scored.Result result : Scored.Result.values()) {
      text.append(
          String.format(
              Locale.ROOT, " %5.1f", 100.0 * counts.getOrDefault(result, 0) / rows.size()));
    }
    return text.append('\n').toString();
  }

  /** True causes down, named ones across. */
  String confusion() {
    StringBuilder text = new StringBuilder("truth \\ said");
    for (Cause said : Cause.values()) {
      text.append(String.format(Locale.ROOT, " %8s", said));
    }
    text.append(" undecided\n");
    for (Cause truth : Cause.values()) {
      text.append(String.format(Locale.ROOT, "%-12s", truth));
      List<Scored> rows =
          scored.stream()
              .filter(s -> s.answer().cause() == truth && s.verdict().isPresent())
              .toList();
      for (Cause said : Cause.values()) {
        text.append(
            String.format(
                Locale.ROOT,
                " %8d",
                rows.stream()
                    .filter(s -> s.verdict().orElseThrow().cause().equals(Optional.of(said)))
                    .count()));
      }
      text.append(
          String.format(
              Locale.ROOT,
              " %9d%n",
              rows.stream().filter(s -> s.verdict().orElseThrow().cause().isEmpty()).count()));
    }
    return text.toString();
  }

  /** Ratios of measured to true sizes where they dominate. */
  String sizes() {
    return size("trail", Cause.TRAILING, Budget::trailPx, FrameAnswer::trailPx)
        + size("focus disc", Cause.FOCUS, Budget::focusDiscPx, FrameAnswer::focusDiscPx)
        + size("tripod r.m.s.", Cause.TRIPOD, Budget::tripodRmsPx, FrameAnswer::tripodRmsPx);
  }

  private String size(
      String name,
      Cause cause,
      ToDoubleFunction<Budget> measured,
      ToDoubleFunction<FrameAnswer> painted) {
    List<Double> ratios = new ArrayList<>();
    for (Scored s : scored) {
      boolean clear = s.answer().kind() == FrameAnswer.Kind.CLEAR && !s.developed();
      if (clear && s.answer().cause() == cause && s.budget().isPresent()) {
        ratios.add(measured.applyAsDouble(s.budget().get()) / painted.applyAsDouble(s.answer()));
      }
    }
    double[] values = ratios.stream().mapToDouble(r -> r).toArray();
    if (values.length == 0) {
      return name + ": none\n";
    }
    return String.format(
        Locale.ROOT,
        "%-14s %3d frames, measured/true: 5 %% %.3f, median %.3f, 95 %% %.3f%n",
        name,
        values.length,
        RobustStats.percentile(0.05, values),
        RobustStats.median(values),
        RobustStats.percentile(0.95, values));
  }

  /** Frames that were named wrongly, one a line. */
  String failures() {
    StringBuilder text = new StringBuilder();
    for (Scored s : scored) {
      Scored.Result result = s.result();
      boolean bad = result == Scored.Result.WRONG || result == Scored.Result.ASTRAY;
      boolean lost = result == Scored.Result.UNMEASURED;
      if (bad || lost) {
        text.append(line(s)).append('\n');
      }
    }
    return text.toString();
  }

  static String line(Scored s) {
    FrameAnswer a = s.answer();
    return String.format(
        Locale.ROOT,
        "%s #%d %s %s w=%.2f share=%.2f t=%.2f stars=%d truth %s -> %s%s%s",
        s.night(),
        s.place() + 1,
        s.developed() ? "8bit" : "lin",
        a.kind(),
        a.widening(),
        a.leadingShare(),
        a.transparency(),
        a.stars(),
        a.cause(),
        s.verdict().map(v -> v.cause().map(Enum::name).orElse("?") + probabilities(v)).orElse(""),
        s.verdict().isEmpty() ? s.status() : "",
        s.budget().map(b -> " sky " + terms(b) + " truth " + a.sky()).orElse(" truth " + a.sky()));
  }

  private static String terms(Budget b) {
    return String.format(
        Locale.ROOT,
        "[core %.2f±%.2f focus %.2f±%.2f trail %.2f±%.2f tripod %.2f±%.2f lens %.2f±%.2f haze %.2f un %.2f]",
        b.sky().corePx2(),
        b.error().corePx2(),
        b.sky().focusPx2(),
        b.error().focusPx2(),
        b.sky().trailingPx2(),
        b.error().trailingPx2(),
        b.sky().tripodPx2(),
        b.error().tripodPx2(),
        b.sky().lensPx2(),
        b.error().lensPx2(),
        b.sky().hazePx2(),
        b.sky().unexplainedPx2());
  }

  private static String probabilities(rondure.blur.Verdict verdict) {
    StringBuilder text = new StringBuilder(" (");
    for (Cause cause : Cause.values()) {
      text.append(String.format(Locale.ROOT, "%.2f ", verdict.probabilities().get(cause)));
    }
    return text.append(')').toString();
  }
}
