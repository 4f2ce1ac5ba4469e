package rondure.blur;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Puts what was seen into the verdict's list of evidence, most telling first. */
record Findings(
    FrameEvidence evidence, FieldShape shape, DirectionReading direction, Excess excess) {

  private static final int FEW_STARS = 15;
  private static final int STARS_FOR_PATTERN = 30;
  private static final double ROUND_FROM = 0.85;
  private static final double SOFTER_EDGE_FROM = 1.25;

  /** Below this coherence nobody sees one direction. */
  private static final double SHARED_FROM = 0.3;

  private static final double AS_SHARP_UP_TO = 1.1;

  List<Evidence> list(SmearOwner owner, OneFrameAttribution.Core core, CameraPath path) {
    List<Evidence> list = new ArrayList<>();
    list.addAll(path.evidence());
    addWidth(list, core);
    if (path.twice().isEmpty() || shape.roundness() < ROUND_FROM) {
      addDirection(list, owner);
    }
    addEdges(list);
    if (evidence.developed()) {
      DarkRing.of(evidence.field())
          .map(ring -> Map.of("ringPercent", 100 * ring.depthShare()))
          .ifPresent(values -> add(list, Evidence.Kind.DARK_RINGS, values));
    }
    if (shape.starCount() < FEW_STARS) {
      add(list, Evidence.Kind.FEW_STARS, Map.of("starCount", (double) shape.starCount()));
    }
    if (evidence.scene().frames() == 1) {
      add(list, Evidence.Kind.ONE_FRAME_ONLY, Map.of());
    }
    return list;
  }

  private void addWidth(List<Evidence> list, OneFrameAttribution.Core core) {
    core.flatness()
        .ifPresent(flat -> add(list, Evidence.Kind.FLAT_TOPPED, Map.of("flatness", flat)));
    if (evidence.scene().frames() > 1) {
      double ratio = shape.fwhmPx() / evidence.scene().sharpestFwhmPx();
      add(list, beside(ratio, shape.fwhmPx() <= core.finestFwhmPx()), Map.of("widthRatio", ratio));
    }
    if (core.sharp() < 0.5) {
      add(
          list,
          Evidence.Kind.SOFT_THROUGHOUT,
          Map.of("sharpestFwhmPx", evidence.scene().sharpestFwhmPx()));
    }
  }

  private static Evidence.Kind beside(double ratio, boolean finest) {
    if (ratio <= AS_SHARP_UP_TO) {
      return Evidence.Kind.AS_SHARP_AS_SHARPEST;
    }
    if (finest) {
      return Evidence.Kind.AS_FINE_AS_PIXELS;
    }
    return ratio > SOFTER_EDGE_FROM
        ? Evidence.Kind.WIDER_THAN_SHARPEST
        : Evidence.Kind.LITTLE_WIDER_THAN_SHARPEST;
  }

  private void addDirection(List<Evidence> list, SmearOwner owner) {
    double trail = direction.trailCentrePx().orElse(0.0);
    if (Oval.probability(shape) >= Oval.CLEAR) {
      add(list, Evidence.Kind.STARS_OVAL, Map.of("roundness", shape.roundness()));
    }
    boolean shared = shape.coherence() >= SHARED_FROM;
    if (!direction.isSmeared() || !shared && shape.roundness() >= ROUND_FROM) {
      if (shape.roundness() >= ROUND_FROM) {
        add(list, Evidence.Kind.STARS_ROUND, Map.of("roundness", shape.roundness()));
      }
      addAbsence(list, trail);
      addPossibleTrail(list, trail);
      return;
    }
    if (shared) {
      addSharedDirection(list);
    }
    if (owner.sizeFits().isEmpty()) {
      add(list, Evidence.Kind.TRAIL_UNKNOWN, Map.of());
    } else {
      Evidence.Kind kind =
          owner.sizeFits().get()
              ? Evidence.Kind.TRAIL_POSSIBLE
              : Evidence.Kind.TRAIL_TOO_SHORT_TO_EXPLAIN;
      double largest = direction.smearLengthPx() / direction.smearRatio().orElse(1.0);
      add(list, kind, Map.of("trailPredictedPx", trail, "trailLargestPx", largest));
    }
    addComparison(list, owner);
    addAbsence(list, trail);
  }

  private void addPossibleTrail(List<Evidence> list, double trailPx) {
    double largestPx = Math.sqrt(24 * direction.skyMostPx2());
    if (Oval.probability(shape) >= Oval.CLEAR && largestPx > 0) {
      add(
          list,
          Evidence.Kind.TRAIL_MAY_ADD,
          Map.of("trailPredictedPx", trailPx, "trailLargestPx", largestPx));
    }
  }

  private void addSharedDirection(List<Evidence> list) {
    add(
        list,
        Evidence.Kind.ONE_DIRECTION_EVERYWHERE,
        Map.of(
            "roundness", shape.roundness(),
            "angleDeg", Math.toDegrees(shape.moments().positionAngleRad()),
            "coherence", shape.coherence()));
  }

  private void addComparison(List<Evidence> list, SmearOwner owner) {
    owner.ground().flatMap(GroundSmear::evidence).ifPresent(list::add);
    owner.along().flatMap(SmearKurtosis.Compared::evidence).ifPresent(list::add);
    if (Math.abs(owner.patternLogOdds()) > 1) {
      Evidence.Kind kind =
          owner.patternLogOdds() > 0
              ? Evidence.Kind.PATTERN_OF_THE_SKY
              : Evidence.Kind.PATTERN_NOT_OF_THE_SKY;
      add(list, kind, Map.of());
    }
    if (owner.likeOthers() || owner.moreThanOthers()) {
      Evidence.Kind kind =
          owner.likeOthers()
              ? Evidence.Kind.STRETCHED_LIKE_OTHERS
              : Evidence.Kind.STRETCHED_MORE_THAN_OTHERS;
      double ratio = owner.overOthers().orElse(1.0);
      add(list, kind, Map.of("frameCount", (double) owner.comparedFrames(), "ratio", ratio));
    }
  }

  /** Far shorter stars than the exposure would trail: they were followed, or near the pole. */
  private void addAbsence(List<Evidence> list, double trailPx) {
    double measured = direction.smearLengthPx();
    if (trailPx > 3 && measured < 0.25 * trailPx) {
      add(
          list,
          Evidence.Kind.TRAIL_ABSENT,
          Map.of("trailPredictedPx", trailPx, "trailMeasuredPx", measured));
    }
  }

  private void addEdges(List<Evidence> list) {
    double centre = shape.fwhmCentrePx().orElse(Double.NaN);
    double ratio = shape.fwhmEdgePx().orElse(Double.NaN) / centre;
    if (ratio > SOFTER_EDGE_FROM) {
      add(list, Evidence.Kind.EDGES_SOFTER, Map.of("edgeRatio", ratio));
    } else if (ratio < AS_SHARP_UP_TO) {
      add(list, Evidence.Kind.EDGES_AS_SHARP, Map.of("edgeRatio", ratio));
    }
    boolean enough = shape.starCount() >= STARS_FOR_PATTERN;
    if (enough && Math.abs(direction.radialPx2()) > 0.5 * excess.corePx2()) {
      add(list, Evidence.Kind.RADIAL_PATTERN, Map.of("radialPx2", direction.radialPx2()));
    }
  }

  private static void add(List<Evidence> list, Evidence.Kind kind, Map<String, Double> values) {
    list.add(new Evidence(kind, values));
  }
}
