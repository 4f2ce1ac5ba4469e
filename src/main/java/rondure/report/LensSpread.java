package rondure.report;

import java.util.List;
import java.util.function.ToDoubleFunction;
import rondure.blur.LensErrors;
import rondure.blur.LensFinding;
import rondure.blur.LensSurface;

/** The errors of the likeliest lens, widened by how far the others are from it. */
final class LensSpread {
  private final List<LensFinding> lenses;
  private final LensSurface first;

  private LensSpread(List<LensFinding> lenses) {
    this.lenses = lenses;
    this.first = lenses.get(0).surface();
  }

  /**
   * Of lenses that may explain a scene.
   *
   * @param lenses at least one, likeliest first
   */
  static LensErrors errors(List<LensFinding> lenses) {
    LensSpread spread = new LensSpread(lenses);
    LensErrors own = lenses.get(0).errors();
    return new LensErrors(
        spread.widened(own.tiltRightPx(), LensSurface::tiltRightPx, true),
        spread.widened(own.tiltDownPx(), LensSurface::tiltDownPx, true),
        spread.widened(own.curvaturePx(), LensSurface::curvaturePx, true),
        spread.widened(own.astigmatismPx(), LensSurface::astigmatismPx, true),
        spread.widened(own.comaPx2(), LensSurface::comaPx2, false));
  }

  /** Discs of the other sign make the same stars. */
  private double widened(double own, ToDoubleFunction<LensSurface> number, boolean signed) {
    double square = own * own;
    for (LensFinding other : lenses.subList(1, lenses.size())) {
      double sign = signed && opposite(other.surface()) ? -1 : 1;
      double off = sign * number.applyAsDouble(other.surface()) - number.applyAsDouble(first);
      square += other.share() * off * off;
    }
    return Math.sqrt(square);
  }

  private boolean opposite(LensSurface other) {
    return first.tiltRightPx() * other.tiltRightPx()
            + first.tiltDownPx() * other.tiltDownPx()
            + first.curvaturePx() * other.curvaturePx()
            + first.astigmatismPx() * other.astigmatismPx()
        < 0;
  }
}
