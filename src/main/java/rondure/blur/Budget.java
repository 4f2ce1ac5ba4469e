package rondure.blur;

import java.util.Objects;
import java.util.Optional;

/**
 * The blur budget of one frame.
 *
 * @param sky each term, median over the sky
 * @param edge each term in the outer fifth of the stars
 * @param error standard error of each of the sky's terms
 * @param trailPx length of the sky's trail, median over the stars, end to end
 * @param focusDiscPx diameter of the field-mean disc of defocus, without sign
 * @param tripodRmsPx r.m.s. motion of the camera at the image centre, √(Mxx + Myy) of the tripod's
 *     tensor
 * @param explainedShare share of the tensors' variation over the frame, beyond their measuring
 *     errors, that the terms explain, 0 to 1
 * @param conditionNumber of the fit: above some 1000 its terms trade against each other
 * @param approximate developed file: widths are approximate, shares may serve
 * @param blur all that makes its stars, at any place; empty where only the terms are known
 */
public record Budget(
    Terms sky,
    Terms edge,
    Terms error,
    double trailPx,
    double focusDiscPx,
    double tripodRmsPx,
    double explainedShare,
    double conditionNumber,
    boolean approximate,
    Optional<FrameBlur> blur) {
  public Budget {
    Objects.requireNonNull(sky, "sky");
    Objects.requireNonNull(edge, "edge");
    Objects.requireNonNull(error, "error");
    Objects.requireNonNull(blur, "blur");
  }

  /** The same with other errors. */
  Budget withError(Terms other) {
    return with(sky, edge, other, blur);
  }

  /** With the second moment of a halo, where there is more likely one than not. */
  Budget withHalo(LightMissing missing) {
    if (missing.own().isEmpty() || missing.haloProbability() < LightMissing.SAID_FROM) {
      return this;
    }
    Halo halo = missing.own().get();
    return with(
        sky.withHaze(halo.px2()),
        edge.withHaze(halo.px2()),
        error.withHaze(halo.px2Error()),
        blur.map(whole -> whole.withGlow(new StarBlur.Glow(halo.share(), halo.px2()))));
  }

  /** With the form of the core: how much of its second moment one sees in its half width. */
  Budget withCoreForm(double visibleShare) {
    return with(sky, edge, error, blur.map(whole -> whole.withCoreForm(visibleShare)));
  }

  private Budget with(
      Terms otherSky, Terms otherEdge, Terms otherError, Optional<FrameBlur> otherBlur) {
    return new Budget(
        otherSky,
        otherEdge,
        otherError,
        trailPx,
        focusDiscPx,
        tripodRmsPx,
        explainedShare,
        conditionNumber,
        approximate,
        otherBlur);
  }
}
