package rondure.blur;

import java.util.Comparator;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import rondure.base.RobustStats;

/**
 * Books what a fit found to causes: focus is the field-mean signed disc, lens everything that
 * varies over the field (tilt, curvature, astigmatism, coma and their products with the focus),
 * trailing the sky's own motion, tripod what the camera's motion adds to it or takes away.
 */
final class Booking {
  private static final double INNER_SHARE = 0.8;

  private final FrameModel model;
  private final double[] shared;
  private final double[] own;

  Booking(FrameModel model, double[] shared, double[] own) {
    this.model = model;
    this.shared = shared;
    this.own = own;
  }

  /** The field's mean signed disc, px. */
  double meanDiscPx() {
    return FrameModel.lens(shared).meanDiscPx(own[FrameModel.DISC], model.stars().stop);
  }

  double focusPx2() {
    return meanDiscPx() * meanDiscPx() / 16;
  }

  /** Terms over some stars, medians; measured minus predicted is left at 0. */
  Terms over(int[] chosen) {
    LensSurface lens = FrameModel.lens(shared);
    FrameStars stars = model.stars();
    double focus = focusPx2();
    return new Terms(
        shared[FrameModel.CORE],
        focus,
        median(chosen, i -> model.trail(i, 0)),
        median(chosen, i -> model.tripod(i, 0, own)),
        median(
            chosen,
            i ->
                lens.at(stars.x[i], stars.y[i], own[FrameModel.DISC], stars.stop).meanPx2()
                    - focus),
        0,
        0);
  }

  /** Terms over some stars with what is left of the measured. */
  Terms over(int[] chosen, double[] predicted) {
    Terms terms = over(chosen);
    double left = median(chosen, i -> model.stars().seen[3 * i] - predicted[3 * i]);
    return new Terms(
        terms.corePx2(),
        terms.focusPx2(),
        terms.trailingPx2(),
        terms.tripodPx2(),
        terms.lensPx2(),
        terms.hazePx2(),
        left);
  }

  /** r.m.s. motion of the camera in the image centre, px. */
  double tripodRmsPx() {
    FrameStars stars = model.stars();
    double steady = model.lengthening() * (stars.centreMoved - stars.centreTrail);
    return Math.sqrt(2 * Math.max(0, steady + own[FrameModel.SHAKE]));
  }

  /** Length of the sky's trail, median over the stars, px. */
  double trailPx() {
    return Math.sqrt(24 * median(all(model.stars()), i -> model.trail(i, 0)));
  }

  static int[] all(FrameStars stars) {
    return IntStream.range(0, stars.count).toArray();
  }

  /** The fifth of the stars that is farthest from the centre. */
  static int[] outerFifth(FrameStars stars) {
    return IntStream.range(0, stars.count)
        .boxed()
        .sorted(Comparator.comparingDouble((Integer i) -> Math.hypot(stars.x[i], stars.y[i])))
        .skip(Math.min(stars.count - 1L, Math.round(stars.count * INNER_SHARE)))
        .mapToInt(i -> i)
        .toArray();
  }

  private static double median(int[] chosen, IntToDoubleFunction value) {
    return RobustStats.median(IntStream.of(chosen).mapToDouble(value).toArray());
  }
}
