package rondure.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rondure.blur.Budget;
import rondure.blur.Cause;
import rondure.blur.Evidence;
import rondure.blur.Terms;
import rondure.blur.Verdict;
import rondure.intake.CaptureTime;
import rondure.intake.Fact;
import rondure.intake.Linearity;
import rondure.intake.ShotFacts;
import rondure.night.FrameShape;
import rondure.night.Graded;
import rondure.night.NightFrame;
import rondure.night.Usefulness;

/** One frame of night.json; every key is always there, null when it is not known. */
final class FrameJson {
  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

  private FrameJson() {}

  /**
   * @param series number of the focus test series that it is part of
   */
  static ObjectNode of(NightFrame frame, Standings.Standing standing, Optional<Integer> series) {
    ObjectNode node = NODES.objectNode();
    node.put("file", frame.file());
    putFacts(node, frame);
    node.put("status", FrameFields.spelled(frame.status()));
    node.put("reason", frame.reason().orElse(null));
    node.put("grade", frame.grade().map(FrameFields::spelled).orElse(null));
    putReasons(node, frame);
    node.set("focusSeries", series.map(NODES::numberNode).orElse(null));
    node.put(
        "largestUse",
        frame.usefulness().map(u -> FrameFields.spelled(u.largestUse())).orElse(null));
    put(node, "pointUpToWidthPx", frame.usefulness().map(Usefulness::pointUpToWidthPx));
    node.put("rankInScene", standing.rankInScene().orElse(null));
    node.put("alikeGroup", standing.alikeGroup().orElse(null));
    node.put("bestOfAlike", standing.bestOfAlike().orElse(null));
    putVerdict(node, frame);
    putBudget(node, frame.budget());
    putApproximate(node, frame);
    put(node, "trailPredictedPx", frame.trailPredictedPx());
    putShape(node, frame.shape());
    return node;
  }

  private static void putReasons(ObjectNode node, NightFrame frame) {
    ArrayNode reasons = node.putArray("gradeReasons");
    for (Graded.Why why : frame.graded().map(Graded::why).orElse(List.of())) {
      ObjectNode reason = reasons.addObject();
      reason.put("reason", FrameFields.spelled(why.reason()));
      put(reason, "value", why.value());
      put(reason, "limit", why.limit());
    }
  }

  private static void putFacts(ObjectNode node, NightFrame frame) {
    node.put("camera", frame.cameraName());
    node.put("lens", frame.facts().lens().orElse(null));
    node.set("scene", frame.sceneNumber().map(NODES::numberNode).orElse(null));
    node.set("nightIndex", frame.nightIndex().map(NODES::numberNode).orElse(null));
    node.put("time", FrameFields.time(frame).orElse(null));
    node.put("timeKnown", FrameFields.timeKnown(frame));
    put(node, "exposureSeconds", FrameFields.value(frame.facts().exposureSeconds()));
    put(node, "fNumber", FrameFields.value(frame.facts().fNumber()));
    put(node, "iso", FrameFields.value(frame.facts().iso()));
    put(node, "focalLengthMm", FrameFields.value(frame.facts().focalLengthMm()));
    put(node, "pixelPitchMicrons", FrameFields.value(frame.facts().pixelPitchMicrons()));
    put(node, "ambientTemperatureC", FrameFields.value(frame.facts().ambientTemperatureC()));
    ObjectNode sources = node.putObject("factSources");
    ShotFacts facts = frame.facts();
    putSource(sources, "time", facts.captureTime().map(CaptureTime::source));
    putSource(sources, "exposureSeconds", facts.exposureSeconds().map(Fact::source));
    putSource(sources, "fNumber", facts.fNumber().map(Fact::source));
    putSource(sources, "iso", facts.iso().map(Fact::source));
    putSource(sources, "focalLengthMm", facts.focalLengthMm().map(Fact::source));
    putSource(sources, "pixelPitchMicrons", facts.pixelPitchMicrons().map(Fact::source));
    putSource(sources, "ambientTemperatureC", facts.ambientTemperatureC().map(Fact::source));
    putSource(sources, "camera", facts.cameraModel().map(Fact::source));
    putSource(sources, "lens", facts.lensModel().map(Fact::source));
  }

  private static void putSource(ObjectNode node, String key, Optional<Fact.Source> source) {
    node.put(key, source.map(FrameFields::spelled).orElse(null));
  }

  private static void putVerdict(ObjectNode node, NightFrame frame) {
    node.put("cause", FrameFields.cause(frame).orElse(null));
    if (frame.verdict().isEmpty()) {
      node.putNull("causeProbabilities");
    } else {
      ObjectNode probabilities = node.putObject("causeProbabilities");
      for (Cause cause : Cause.values()) {
        put(probabilities, FrameFields.spelled(cause), FrameFields.probability(frame, cause));
      }
    }
    put(node, "confidence", FrameFields.confidence(frame));
    ArrayNode between = node.putArray("undecidedBetween");
    ArrayNode evidence = node.putArray("evidence");
    frame.verdict().ifPresent(verdict -> fill(verdict, between, evidence));
  }

  private static void fill(Verdict verdict, ArrayNode between, ArrayNode evidence) {
    verdict.undecidedBetween().forEach(cause -> between.add(FrameFields.spelled(cause)));
    for (Evidence seen : verdict.evidence()) {
      ObjectNode node = evidence.addObject();
      node.put("kind", FrameFields.spelled(seen.kind()));
      ObjectNode values = node.putObject("values");
      seen.values().entrySet().stream()
          .sorted(Map.Entry.comparingByKey())
          .forEach(entry -> put(values, entry.getKey(), Optional.of(entry.getValue())));
    }
  }

  private static void putBudget(ObjectNode node, Optional<Budget> budget) {
    putTerms(node, "budgetPx2", budget.map(Budget::sky));
    putTerms(node, "budgetEdgePx2", budget.map(Budget::edge));
    putTerms(node, "budgetErrorPx2", budget.map(Budget::error));
    put(node, "explainedShare", budget.map(Budget::explainedShare));
    put(node, "trailMedianPx", budget.map(Budget::trailPx));
    put(node, "focusDiscPx", budget.map(Budget::focusDiscPx));
    put(node, "tripodRmsPx", budget.map(Budget::tripodRmsPx));
    put(node, "fitConditionNumber", budget.map(Budget::conditionNumber));
  }

  private static void putTerms(ObjectNode node, String key, Optional<Terms> terms) {
    if (terms.isEmpty()) {
      node.putNull(key);
      return;
    }
    ObjectNode named = node.putObject(key);
    put(named, "core", terms.map(Terms::corePx2));
    for (Cause cause : Cause.values()) {
      if (cause != Cause.NONE) {
        put(named, FrameFields.spelled(cause), terms.map(t -> t.of(cause)));
      }
    }
    put(named, "unexplained", terms.map(Terms::unexplainedPx2));
  }

  private static void putApproximate(ObjectNode node, NightFrame frame) {
    Optional<Linearity> linearity = frame.measurement().map(m -> m.linearity());
    node.put("pixels", linearity.map(FrameFields::spelled).orElse(null));
    node.put("approximate", linearity.map(l -> l == Linearity.DEVELOPED).orElse(null));
  }

  private static void putShape(ObjectNode node, Optional<FrameShape> shape) {
    node.set("starCount", shape.map(s -> NODES.numberNode(s.starCount())).orElse(null));
    put(node, "fwhmPx", shape.map(FrameShape::fwhmPx));
    put(node, "fwhmArcsec", shape.flatMap(FrameShape::fwhmArcsec));
    put(node, "rmsWidthPx", shape.map(FrameShape::rmsWidthPx));
    put(node, "roundness", shape.map(FrameShape::roundness));
    put(node, "elongationAngleDeg", shape.map(FrameShape::elongationAngleDeg));
    put(node, "directionCoherence", shape.map(FrameShape::directionCoherence));
    put(node, "fwhmCentrePx", shape.flatMap(FrameShape::fwhmCentrePx));
    put(node, "fwhmEdgePx", shape.flatMap(FrameShape::fwhmEdgePx));
    put(node, "skyBackground", shape.map(FrameShape::skyBackground));
  }

  private static void put(ObjectNode node, String key, Optional<Double> value) {
    node.put(key, Rounded.of(value).orElse(null));
  }
}
