package rondure.blur;

import java.util.ArrayList;
import java.util.List;
import rondure.base.RobustStats;

/**
 * Which way stars are lopsided over the field, against what a lens's coma would make of them.
 *
 * <p>Discs of defocus and trails are the same on both sides of their middle; coma alone has a tail
 * along the radius, outwards or, in other lenses, inwards. Rays through the pupil at (ρ, θ) land at
 * c ρ² (2 + cos 2θ) along the radius and c ρ² sin 2θ across (Born &amp; Wolf, Principles of Optics,
 * ch. 5, from memory): over an evenly lit pupil that has moments c²/2 and c²/6 and, about its
 * centre, ⟨r² x⟩ = c³/3 along the radius. A star's skewness is that over its whole ⟨r²⟩. The
 * estimator sees a part of it that depends on the core, so only the pattern and a wide range of
 * sizes are held against a lens.
 */
final class ComaTails {
  private static final double[] ZONE_EDGES = {0.3, 0.5, 0.65, 0.8};

  /** Third moments come out as so much of the truth, where tails are faint or wide. */
  private static final double LEAST_PART = 0.3;

  private static final double MOST_PART = 2;

  /** How far a zone may be off the pattern, as a share of what is expected in it. */
  private static final double PATTERN_ERROR = 0.3;

  /** Neighbours and pixels make stars lopsided by so much, px. */
  private static final double FLOOR_PX = 0.03;

  private static final double MEDIAN_ERROR = 1.2533;
  private static final double SIGMA_OF_MAD = 1.4826;
  private static final int LEAST_STARS = 8;
  private static final double MOST_LOSS = 40;
  private static final double SEEN_CHI2 = 25;
  private static final int STEPS = 40;

  private ComaTails() {}

  /** What a ring of the field shows and what coma makes one expect, px outwards. */
  private record Zone(double seenPx, double errorPx, double comaPx) {}

  /**
   * Half of χ² of the stars' lopsidedness under a solution's coma, of which fits show a free part;
   * limited, since sides of stars have other reasons too.
   */
  static double loss(SceneSolution solution) {
    List<Zone> zones = zones(solution);
    double left = Double.POSITIVE_INFINITY;
    for (int step = 0; step <= STEPS; step++) {
      double part = LEAST_PART * Math.pow(MOST_PART / LEAST_PART, step / (double) STEPS);
      left = Math.min(left, Math.min(halfChi2(zones, part), halfChi2(zones, -part)));
    }
    return zones.isEmpty() ? 0 : Math.min(MOST_LOSS, left);
  }

  /** Whether stars have tails outwards, or all inwards, that no disc can make. */
  static boolean seen(SceneSolution solution) {
    double sum = 0;
    for (Zone zone : zones(solution)) {
      double sigmas = zone.seenPx() / zone.errorPx();
      sum += sigmas * Math.abs(sigmas);
    }
    return Math.abs(sum) > SEEN_CHI2;
  }

  private static double halfChi2(List<Zone> zones, double part) {
    double sum = 0;
    for (Zone zone : zones) {
      double expected = part * zone.comaPx();
      double error = Math.hypot(zone.errorPx(), PATTERN_ERROR * expected);
      sum += Math.pow((zone.seenPx() - expected) / error, 2) / 2;
    }
    return sum;
  }

  private static List<Zone> zones(SceneSolution solution) {
    List<Zone> zones = new ArrayList<>();
    for (int zone = 0; zone < ZONE_EDGES.length; zone++) {
      double to = zone + 1 < ZONE_EDGES.length ? ZONE_EDGES[zone + 1] : Double.MAX_VALUE;
      Ring ring = new Ring(solution, ZONE_EDGES[zone], to);
      if (ring.outwards.size() >= LEAST_STARS) {
        zones.add(ring.zone());
      }
    }
    return zones;
  }

  /** The stars of a ring in all frames solved together. */
  private static final class Ring {
    private final List<Double> outwards = new ArrayList<>();
    private final List<Double> across = new ArrayList<>();
    private final List<Double> coma = new ArrayList<>();
    private int frames;

    Ring(SceneSolution solution, double from, double to) {
      for (int k : solution.together()) {
        FrameModel model = solution.models().get(k);
        if (model.whole()) {
          add(model, solution, k, from, to);
        }
      }
    }

    private void add(FrameModel model, SceneSolution solution, int frame, double from, double to) {
      LensSurface lens = solution.lens();
      double[] shared = solution.shared();
      double[] own = solution.own(frame);
      FrameStars stars = model.stars();
      FieldPlaces places = stars.places;
      int before = outwards.size();
      for (int i = 0; i < stars.count; i++) {
        double radius = Math.hypot(places.x[i], places.y[i]);
        if (radius >= from && radius < to) {
          outwards.add(stars.skewOutPx[i]);
          across.add(stars.skewAcrossPx[i]);
          double even = model.evenPx2(i, shared, own);
          coma.add(lens.comaSkewPx(radius, places.stop, even));
        }
      }
      frames += outwards.size() > before ? 1 : 0;
    }

    /** Frames show the same stars: they count as the root of their number. */
    Zone zone() {
      double scatter = SIGMA_OF_MAD * RobustStats.median(absolute(across));
      double independent = outwards.size() / Math.sqrt(Math.max(1, frames));
      double error = Math.hypot(FLOOR_PX, MEDIAN_ERROR * scatter / Math.sqrt(independent));
      return new Zone(median(outwards), error, median(coma));
    }

    private static double median(List<Double> values) {
      return RobustStats.median(values.stream().mapToDouble(v -> v).toArray());
    }

    private static double[] absolute(List<Double> values) {
      return values.stream().mapToDouble(Math::abs).toArray();
    }
  }
}
