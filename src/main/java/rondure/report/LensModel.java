package rondure.report;

import java.util.ArrayList;
import java.util.List;
import rondure.base.Moments;
import rondure.base.Orientation;
import rondure.blur.BestCase;
import rondure.blur.CoreReading;
import rondure.blur.LensErrors;
import rondure.blur.LensStar;
import rondure.blur.LensSurface;
import rondure.blur.SceneBudget;

/**
 * A lens alone, without sky and tripod and with focus at its best for the whole frame.
 *
 * @param surface over the field, stored axes, at the widest aperture
 * @param errors of its numbers
 * @param coreFwhmPx half-maximum width of the core
 * @param widthPx stored width of the frame
 * @param heightPx stored height
 */
record LensModel(
    LensSurface surface, LensErrors errors, double coreFwhmPx, int widthPx, int heightPx) {

  /** By the likelier of the core's two readings. */
  static LensModel of(SceneBudget.Shared shared, int widthPx, int heightPx) {
    CoreReading core = shared.core();
    boolean real = core.realProbability() >= 0.5;
    double visible = Math.sqrt(core.ifDefocusedPx2()) * Moments.FWHM_PER_SIGMA;
    return new LensModel(
        shared.lens(),
        LensSpread.errors(shared.lenses()),
        real ? core.fwhmPx() : Math.min(core.fwhmPx(), visible),
        widthPx,
        heightPx);
  }

  private double halfDiagonalPx() {
    return Math.hypot(widthPx, heightPx) / 2;
  }

  /** Place of the frame's right border, half diagonals. */
  double sideX() {
    return widthPx / 2.0 / halfDiagonalPx();
  }

  /** Place of its lower border. */
  double sideY() {
    return heightPx / 2.0 / halfDiagonalPx();
  }

  /**
   * A star.
   *
   * @param x stored place, half diagonals from the middle
   * @param y the same downwards
   * @param stop f-number of the widest aperture over that asked for
   */
  LensStar star(double x, double y, double stop) {
    double focused = surface.bestCentreDiscPx(stop);
    return new LensStar(surface.spot(x, y, focused, stop), coreFwhmPx);
  }

  /** Its width at half brightness, px. */
  double widthAt(double x, double y, double stop) {
    return star(x, y, stop).widthPx();
  }

  /** Mean width in the four corners. */
  double cornerWidthPx(double stop) {
    double sum = 0;
    for (double x : new double[] {-sideX(), sideX()}) {
      for (double y : new double[] {-sideY(), sideY()}) {
        sum += widthAt(x, y, stop) / 4;
      }
    }
    return sum;
  }

  /** Mean width in the middles of the four borders. */
  double sideWidthPx(double stop) {
    return (widthAt(-sideX(), 0, stop)
            + widthAt(sideX(), 0, stop)
            + widthAt(0, -sideY(), stop)
            + widthAt(0, sideY(), stop))
        / 4;
  }

  /** What the lens adds to the core's second moment in the four corners, mean, px². */
  double cornerAddedPx2() {
    double focused = surface.bestCentreDiscPx(1);
    double sum = 0;
    for (double x : new double[] {-sideX(), sideX()}) {
      for (double y : new double[] {-sideY(), sideY()}) {
        sum += surface.at(x, y, focused, 1).meanPx2() / 4;
      }
    }
    return sum;
  }

  /** With the core that another aperture leaves: only diffraction is known to change. */
  LensModel withDiffraction(double fromFwhmPx, double toFwhmPx) {
    double change = BestCase.gaussianPx2(toFwhmPx) - BestCase.gaussianPx2(fromFwhmPx);
    double fwhm = Math.sqrt(BestCase.gaussianPx2(coreFwhmPx) + change) * Moments.FWHM_PER_SIGMA;
    return new LensModel(surface, errors, fwhm, widthPx, heightPx);
  }

  /** How much wider the core becomes by a second moment beside it, as a ratio. */
  double widening(double px2) {
    return Math.sqrt(1 + Math.max(0, px2) / BestCase.gaussianPx2(coreFwhmPx));
  }

  /**
   * Stored direction of a direction as displayed.
   *
   * @return x, y
   */
  static List<Double> stored(Orientation orientation, double x, double y) {
    List<Double> found = new ArrayList<>(List.of(0.0, 0.0));
    // The turn is orthogonal: its transpose undoes it.
    found.set(0, x * orientation.displayX(1, 0, 1, 1) + y * orientation.displayY(1, 0, 1, 1));
    found.set(1, x * orientation.displayX(0, 1, 1, 1) + y * orientation.displayY(0, 1, 1, 1));
    return found;
  }
}
