package rondure.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import rondure.blur.Cause;
import rondure.blur.Evidence;
import rondure.blur.Verdict;
import rondure.night.NightFrame;
import rondure.night.Scene;
import rondure.report.layout.Wording;
import rondure.report.picture.Mark;

/** The verdict on a frame in sentences: cause, how sure, evidence, what to do. */
final class CauseWords {
  private static final double SURE_FROM = 0.8;
  private static final double LEAST_SAID = 0.005;

  /** Every number that a sentence on evidence may use. */
  static final List<String> EVIDENCE_VALUES =
      List.of(
          "widthRatio",
          "roundness",
          "angleDeg",
          "coherence",
          "trailPredictedPx",
          "trailLargestPx",
          "edgeRatio",
          "starCount",
          "ratio",
          "frameCount",
          "offsetPx",
          "fainterPercent",
          "pairCount",
          "tailPx2",
          "wingPercent",
          "haloPercent",
          "lightCount",
          "ringPercent",
          "hotPixelCount",
          "hotPixelFwhmPx",
          "kurtosis",
          "lineKurtosis",
          "sharpestFwhmPx",
          "focusPercent",
          "trailPercent",
          "tripodPercent",
          "lensPercent",
          "otherPercent",
          "otherFocusPercent",
          "discPx",
          "trailPx",
          "smearPx2",
          "creepPxPerMin",
          "driftPxPerMin",
          "axisOffArcmin",
          "jumpPx",
          "lostPercent",
          "scatterMag");

  private final Wording words;

  CauseWords(Wording words) {
    this.words = words;
  }

  /** One line: the cause and how sure that is. */
  String heading(NightFrame frame) {
    if (frame.verdict().isEmpty()) {
      return words.say("cause.unknown");
    }
    Verdict verdict = frame.verdict().get();
    if (verdict.cause().isEmpty()) {
      return undecided(frame, verdict);
    }
    String sure = verdict.confidence() >= SURE_FROM ? "sure.high" : "sure.fair";
    return words.say(
        key(frame, verdict.cause().get().toString()),
        "sure",
        words.say(sure, "percent", Figures.percent(verdict.confidence())));
  }

  private String undecided(NightFrame frame, Verdict verdict) {
    List<Cause> between = verdict.undecidedBetween();
    if (between.size() < 2) {
      return words.say("cause.UNDECIDED.open");
    }
    return words.say(
        key(frame, "UNDECIDED"),
        "first",
        said(between.get(0)),
        "second",
        said(between.get(1)),
        "firstPercent",
        Figures.percent(verdict.probabilities().get(between.get(0))),
        "secondPercent",
        Figures.percent(verdict.probabilities().get(between.get(1))));
  }

  /**
   * A frame that is kept is not blamed for what little softness it has, nor is one that is not kept
   * called sharp.
   */
  private static String key(NightFrame frame, String cause) {
    if (LargestPart.isSpareable(frame)) {
      return "cause.notKept." + cause;
    }
    return (Ranking.isKeep(frame) && !cause.equals("NONE") ? "cause.kept." : "cause.") + cause;
  }

  /**
   * Evidence, most important first (the bar of a budget tells its shares), then why it is not kept,
   * then what to do about it.
   */
  List<String> sentences(NightFrame frame, Scene scene) {
    if (frame.verdict().isEmpty()) {
      return new GradeWords(words).sentences(frame);
    }
    List<String> sentences = new ArrayList<>();
    Mark mark = Mark.of(frame);
    frame.verdict().get().evidence().stream()
        .filter(seen -> !isSaidElsewhere(seen.kind(), frame))
        .sorted(Comparator.comparing((Evidence seen) -> isOfAnotherCause(seen, mark)))
        .forEach(seen -> sentences.add(evidence(seen, mark)));
    sentences.addAll(new GradeWords(words).sentences(frame));
    if (mark == Mark.UNDECIDED) {
      boolean two = frame.verdict().get().undecidedBetween().size() == 2;
      sentences.add(words.say(two ? "undecided.meaning" : "undecided.meaning.open"));
    }
    sentences.add(action(frame, mark, scene));
    return sentences;
  }

  /** A little focus is told last where something else is blamed. */
  private static boolean isOfAnotherCause(Evidence evidence, Mark mark) {
    return evidence.kind() == Evidence.Kind.ROUND_WIDENING
        && mark != Mark.FOCUS
        && mark != Mark.UNDECIDED;
  }

  /** The bar of a budget tells its shares, and the reason to keep a frame that it is as sharp. */
  private static boolean isSaidElsewhere(Evidence.Kind kind, NightFrame frame) {
    return switch (kind) {
      case SHARES -> frame.budget().isPresent();
      case AS_SHARP_AS_SHARPEST -> GradeWords.comparesWithTheBest(frame);
      default -> false;
    };
  }

  private String action(NightFrame frame, Mark mark, Scene scene) {
    if (mark == Mark.UNDECIDED) {
      return words.say(undecidedAction(frame.verdict().orElseThrow().undecidedBetween()));
    }
    if (LargestPart.isSpareable(frame)) {
      return words.say("action.notKept." + LargestPart.of(frame).orElse(Cause.NONE));
    }
    String kept = "action.kept." + mark;
    String plain = "action." + mark;
    String mounted = plain + ".mount";
    if (Ranking.isKeep(frame) && words.has(kept)) {
      return words.say(kept);
    }
    return words.say(scene.isMounted() && words.has(mounted) ? mounted : plain);
  }

  /** What would settle it: lamps tell the camera's motion from the sky's, not focus from lens. */
  static String undecidedAction(List<Cause> between) {
    if (between.contains(Cause.HAZE)) {
      return "action.UNDECIDED.HAZE";
    }
    boolean moved = between.contains(Cause.TRAILING) || between.contains(Cause.TRIPOD);
    if (moved || between.isEmpty()) {
      return "action.UNDECIDED";
    }
    return between.contains(Cause.LENS) ? "action.UNDECIDED.LENS" : "action.UNDECIDED.FOCUS";
  }

  /** What is seen in a sharp frame is said in other words than in a softened one. */
  private String evidence(Evidence evidence, Mark mark) {
    Map<String, String> values = new LinkedHashMap<>();
    EVIDENCE_VALUES.forEach(name -> values.put(name, "?"));
    values.put("slope", "?");
    evidence.values().forEach((name, value) -> values.put(name, Figures.byName(name, value)));
    Double angle = evidence.values().get("angleDeg");
    if (angle != null) {
      values.put("slope", slope(angle));
    }
    String key = "evidence." + evidence.kind();
    String special = key + "." + mark;
    return words.say(words.has(special) ? special : key, values);
  }

  /** A direction as displayed in plain words; 0 = to the right, clockwise. */
  String slope(double angleDeg) {
    double turned = ((angleDeg % 180) + 180) % 180;
    int eighth = (int) Math.floor(turned / 22.5 + 0.5) % 8;
    return words.say("slope." + eighth);
  }

  /** The causes with their probabilities, likeliest first, those near 0 left out. */
  String likelihoods(NightFrame frame) {
    return frame
        .verdict()
        .map(
            verdict ->
                String.join(
                    "  ·  ",
                    verdict.probabilities().entrySet().stream()
                        .filter(entry -> entry.getValue() >= LEAST_SAID)
                        .sorted(
                            Comparator.comparing(Map.Entry<Cause, Double>::getValue)
                                .reversed()
                                .thenComparing(Map.Entry::getKey))
                        .map(
                            entry -> name(entry.getKey()) + " " + Figures.percent(entry.getValue()))
                        .toList()))
        .orElse("");
  }

  private String said(Cause cause) {
    return words.say("glance.cause." + Mark.of(cause));
  }

  private String name(Cause cause) {
    return words.say("mark." + Mark.of(cause));
  }
}
