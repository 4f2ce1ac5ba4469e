package rondure.blur;

/**
 * Settings of the attribution from one frame.
 *
 * @param namedRatio [1.25] r.m.s. width over the core's from which a cause is named: what an eye
 *     sees at full size (common practice)
 * @param namedEdgeRatio [1.6] the same for the outer part of the frame alone
 * @param widestCoreSensorPx [3.1] FWHM at which the core of a lens and plain defocus are equally
 *     likely, measured on sensor values; from trials on simulated and real nights
 * @param widestCoreDevelopedPx [3.3] the same for developed files, which are demosaiced
 * @param coreSpreadPx [0.22] width of the logistic around it
 * @param pixelLimitFwhmPx [1.6] no frame is called soft for a core below this: diffraction, pixel,
 *     filter and demosaicing give 1.1 to 1.6 px with a perfect lens
 * @param usualCoreFwhmPx [2.3] the core to expect when a whole scene is out of focus: fast lenses
 *     give 1.5 to 3 px (common practice)
 */
public record AttributionSettings(
    double namedRatio,
    double namedEdgeRatio,
    double widestCoreSensorPx,
    double widestCoreDevelopedPx,
    double coreSpreadPx,
    double pixelLimitFwhmPx,
    double usualCoreFwhmPx) {

  public AttributionSettings {
    if (!(namedRatio > 1 && namedEdgeRatio >= namedRatio)) {
      throw new IllegalArgumentException(
          "ratios must satisfy 1 < namedRatio <= namedEdgeRatio, were "
              + namedRatio
              + ", "
              + namedEdgeRatio);
    }
    if (!(widestCoreSensorPx > 0 && widestCoreDevelopedPx > 0 && coreSpreadPx > 0)) {
      throw new IllegalArgumentException("core limits must be > 0 px");
    }
    if (!(pixelLimitFwhmPx >= 0 && pixelLimitFwhmPx <= usualCoreFwhmPx)) {
      throw new IllegalArgumentException(
          "pixelLimitFwhmPx must be in [0, usualCoreFwhmPx], was " + pixelLimitFwhmPx);
    }
    if (!(usualCoreFwhmPx > 0 && usualCoreFwhmPx <= widestCoreSensorPx)) {
      throw new IllegalArgumentException(
          "usualCoreFwhmPx must be in (0, widestCoreSensorPx], was " + usualCoreFwhmPx);
    }
  }

  public static AttributionSettings defaults() {
    return new AttributionSettings(1.25, 1.6, 3.1, 3.3, 0.22, 1.6, 2.3);
  }
}
