package rondure.blur;

import java.util.function.IntToDoubleFunction;
import java.util.function.ToDoubleFunction;
import rondure.base.RobustStats;

/**
 * Books what a fit found to causes: focus is the field-mean signed disc, lens everything that
 * varies over the field (tilt, curvature, astigmatism, coma and their products with the focus),
 * trailing the sky's own motion, tripod what the camera's motion adds to it or takes away.
 */
final class Booking {
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
    return model.meanDiscPx(shared, own[FrameModel.DISC]);
  }

  double focusPx2() {
    return meanDiscPx() * meanDiscPx() / 16;
  }

  /** Median over the sky of what the camera's motion adds to the sky's. */
  double tripodPx2() {
    return model.sky().median(i -> model.tripod(i, own));
  }

  /** Median over the sky of what varies over the field. */
  double lensPx2() {
    return model.sky().median(lens());
  }

  /** Median over the sky of each term; what is left of the measured is not told. */
  Terms sky() {
    return terms(model.sky()::median, 0);
  }

  /** Median over the sky of each term. */
  Terms sky(double[] predicted) {
    return terms(model.sky()::median, left(predicted));
  }

  /** Median over the outer fifth of the sky of each term. */
  Terms edge(double[] predicted) {
    return terms(model.sky()::edgeMedian, left(predicted));
  }

  private double left(double[] predicted) {
    double[] left = new double[model.stars().count];
    for (int i = 0; i < left.length; i++) {
      left[i] = model.stars().seen[3 * i] - predicted[3 * i];
    }
    return RobustStats.median(left);
  }

  private Terms terms(ToDoubleFunction<IntToDoubleFunction> median, double leftPx2) {
    return new Terms(
        shared[FrameModel.CORE],
        focusPx2(),
        median.applyAsDouble(model::trail),
        median.applyAsDouble(i -> model.tripod(i, own)),
        median.applyAsDouble(lens()),
        0,
        leftPx2);
  }

  private IntToDoubleFunction lens() {
    LensSurface lens = model.lens(shared);
    FieldPlaces places = model.sky().places();
    double focus = focusPx2();
    double disc = own[FrameModel.DISC];
    return i -> lens.roundPx2(places.x[i], places.y[i], disc, places.stop) - focus;
  }

  /** r.m.s. motion of the camera in the image centre, px. */
  double tripodRmsPx() {
    FieldPlaces places = model.stars().places;
    double steady = model.lengthening() * (places.centreMoved[0] - places.centreTrail[0]);
    return Math.sqrt(2 * Math.max(0, steady + own[FrameModel.SHAKE]));
  }

  /** Length of the sky's trail, median over the sky, px. */
  double trailPx() {
    return Math.sqrt(24 * model.sky().median(model::trail));
  }
}
