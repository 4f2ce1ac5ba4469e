package rondure.blur;

import java.util.ArrayList;
import java.util.List;
import rondure.stars.AverageStar;

/**
 * An average star in rings about its centroid: in each the mean light, and by how much it differs
 * between directions as the cosine and sine of twice the angle. Whatever is round, wings, halos and
 * discs of defocus, has none of the latter.
 */
final class StretchRings {
  private static final double STEP_PER_FWHM = 0.12;
  private static final int LEAST_PLACES = 6;

  /** Pixels and lattices differ between directions by such a share of the light. */
  private static final double MODEL_ERROR = 0.003;

  /** Neighbours of one star, shared out over all of them. */
  private static final double NEIGHBOUR_ERROR = 0.004;

  /** Peak of the star = 1. */
  final double[] radiiPx;

  final double[] light;

  /** Amplitude of cos 2φ. */
  final double[] along;

  /** Amplitude of sin 2φ. */
  final double[] diagonal;

  final double[] errors;
  private final double stepPx;

  /** One ring's sums. */
  private static final class Ring {
    private int places;
    private double radius;
    private double light;
    private double cosines;
    private double sines;
    private double cosineSquares;
    private double sineSquares;

    void add(double x, double y, double value) {
      double square = Math.max(1e-12, x * x + y * y);
      double cosine = (x * x - y * y) / square;
      double sine = 2 * x * y / square;
      places++;
      radius += Math.sqrt(square);
      light += value;
      cosines += cosine * value;
      sines += sine * value;
      cosineSquares += cosine * cosine;
      sineSquares += sine * sine;
    }

    boolean isUsable() {
      return places >= LEAST_PLACES && Math.min(cosineSquares, sineSquares) > 1;
    }
  }

  StretchRings(AverageStar star, double fwhmPx) {
    stepPx = Math.max(STEP_PER_FWHM * fwhmPx, 1.0 / star.samplesPerPx());
    AverageGrid grid = new AverageGrid(star, Double.MAX_VALUE);
    List<Ring> rings = rings(grid);
    double neighbours = NEIGHBOUR_ERROR / Math.sqrt(star.starCount());
    int count = rings.size();
    radiiPx = new double[count];
    light = new double[count];
    along = new double[count];
    diagonal = new double[count];
    errors = new double[count];
    for (int i = 0; i < count; i++) {
      Ring ring = rings.get(i);
      radiiPx[i] = ring.radius / ring.places;
      light[i] = ring.light / ring.places;
      along[i] = ring.cosines / ring.cosineSquares;
      diagonal[i] = ring.sines / ring.sineSquares;
      double noise = grid.noise() * Math.sqrt(grid.alike() / ring.cosineSquares);
      errors[i] = Math.hypot(Math.hypot(noise, MODEL_ERROR * light[i]), neighbours);
    }
  }

  private List<Ring> rings(AverageGrid grid) {
    List<Ring> rings = new ArrayList<>();
    for (int i = 0; i < grid.count(); i++) {
      int place = (int) (Math.hypot(grid.xPx(i), grid.yPx(i)) / stepPx);
      while (rings.size() <= place) {
        rings.add(new Ring());
      }
      rings.get(place).add(grid.xPx(i), grid.yPx(i), grid.light(i));
    }
    return rings.stream().filter(Ring::isUsable).toList();
  }

  int count() {
    return radiiPx.length;
  }

  /** Light of the star over its peak, px². */
  double fluxPx2() {
    double sum = 0;
    for (int i = 0; i < radiiPx.length; i++) {
      sum += 2 * Math.PI * radiiPx[i] * stepPx * light[i];
    }
    return Math.max(1e-9, sum);
  }
}
