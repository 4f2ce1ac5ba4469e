package rondure.blur;

/**
 * Standard errors of the numbers of a {@link LensSurface}, one for each: how far they move when
 * blocks of the field are drawn anew.
 */
public record LensErrors(
    double tiltRightPx,
    double tiltDownPx,
    double curvaturePx,
    double astigmatismPx,
    double comaPx2) {
  public LensErrors {
    if (!(tiltRightPx >= 0
        && tiltDownPx >= 0
        && curvaturePx >= 0
        && astigmatismPx >= 0
        && comaPx2 >= 0)) {
      throw new IllegalArgumentException(
          "standard errors must be >= 0, were "
              + tiltRightPx
              + ", "
              + tiltDownPx
              + ", "
              + curvaturePx
              + ", "
              + astigmatismPx
              + ", "
              + comaPx2);
    }
  }
}
