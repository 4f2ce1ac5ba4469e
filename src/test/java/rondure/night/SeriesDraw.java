package rondure.night;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import rondure.base.Moments;
import rondure.stars.Star;
import rondure.stars.StarField;
import rondure.testing.Fields;

/** Draws the points of focus tests and of nights without one, from formulas, without pixels. */
final class SeriesDraw {
  /** Stands for a field that says nothing of the position of the focus. */
  static final StarField NO_STARS = Fields.field(3000, 2000, List.of(), List.of());

  /** What a frame's second moment is off by, beside what its stars tell: a share of it. */
  private static final double OFF_SHARE = 0.015;

  final Random random;

  SeriesDraw(long seed) {
    this.random = new Random(seed);
  }

  double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  /** A point of true moment, with noise. */
  SeriesPoint point(int order, double px2, Moments smear, double starNoise, StarField field) {
    double seen = px2 * (1 + OFF_SHARE * random.nextGaussian()) + starNoise * random.nextGaussian();
    double kept = Math.max(0.1, seen);
    return new SeriesPoint(
        order,
        order,
        starNoise,
        Moments.round(kept).plus(smear),
        Optional.empty(),
        Optional.of(30.0 * order),
        Optional.of(2.8),
        field == NO_STARS ? oneStar(kept, starNoise) : field);
  }

  /** Says nothing of the field. */
  private static StarField oneStar(double px2, double noisePx2) {
    List<Star> stars = List.of(Fields.star(1500, 1000, Moments.round(px2), noisePx2));
    return Fields.field(3000, 2000, stars, List.of());
  }

  Moments smallSmear() {
    return new Moments(0.01 * random.nextGaussian(), 0.01 * random.nextGaussian(), 0);
  }

  /**
   * A drawn focus test.
   *
   * @param run its points
   * @param at true best focus, as a position between its frames: whole at a frame's own
   */
  record Test(List<SeriesPoint> run, double at) {}

  /**
   * Positions of the focus, as steps from best focus, one for each frame.
   *
   * @param uneven scatter of each position, a share of a step
   */
  List<Double> steps(int positions, int repeats, double before, double uneven) {
    List<Double> steps = new ArrayList<>();
    for (int i = 0; i < positions; i++) {
      double step = i - before + uneven * random.nextGaussian();
      for (int k = 0; k < repeats; k++) {
        steps.add(step);
      }
    }
    return steps;
  }

  /** The points for these steps; the ends are 1.5 to 4 times as wide as the sharpest. */
  List<SeriesPoint> run(List<Double> steps, boolean withStars, int firstOrder) {
    double core = between(0.5, 1.5);
    double reach = steps.stream().mapToDouble(Math::abs).max().orElseThrow();
    double perStep = 4 * Math.sqrt(core * (between(2.3, 9) - 1)) / reach;
    double starNoise = between(0.002, 0.02) * core;
    double tilt = between(0.6, 1.5);
    List<SeriesPoint> run = new ArrayList<>();
    for (int i = 0; i < steps.size(); i++) {
      double disc = perStep * steps.get(i);
      StarField field = withStars ? field(core, disc, tilt) : NO_STARS;
      run.add(point(firstOrder + i, core + disc * disc / 16, smallSmear(), starNoise, field));
    }
    return run;
  }

  /** A tilted field: discs grow to the right. */
  StarField field(double core, double disc, double tiltPx) {
    List<Star> stars = new ArrayList<>();
    for (int i = 0; i < 80; i++) {
      double x = between(0, 3000);
      double y = between(0, 2000);
      double own = disc + tiltPx * (x - 1500) / 1800;
      double px2 = Math.max(0.1, core + own * own / 16 + 0.03 * core * random.nextGaussian());
      stars.add(Fields.star(x, y, Moments.round(px2), 0.03 * core));
    }
    return Fields.field(3000, 2000, stars, List.of());
  }

  /** Frames at one focus. */
  List<SeriesPoint> quiet(int frames, int firstOrder, double px2) {
    List<SeriesPoint> run = new ArrayList<>();
    for (int i = 0; i < frames; i++) {
      run.add(point(firstOrder + i, px2, smallSmear(), 0.01 * px2, NO_STARS));
    }
    return run;
  }
}
