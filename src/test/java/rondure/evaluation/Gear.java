package rondure.evaluation;

import rondure.sim.CameraPlan;
import rondure.sim.LensPlan;
import rondure.sim.Mosaic;
import rondure.sim.Throughput;

/**
 * Camera and lens of a drawn night.
 *
 * @param focalLengthMm 14 to 135
 * @param fNumber 1.8 to 4
 * @param pitchMicrons pixels as of small sensors up to binned ones: frames stay small, fields wide
 * @param widthPx stored width
 * @param heightPx stored height
 * @param coreFwhmPx 1.3 to 3.2
 * @param moffatBeta 0 = Gaussian
 */
record Gear(
    double focalLengthMm,
    double fNumber,
    double pitchMicrons,
    int widthPx,
    int heightPx,
    double coreFwhmPx,
    double moffatBeta) {
  static final double FULL_WELL_ELECTRONS = 31_742;
  static final double ISO = 800;
  static final double ZERO_POINT = 1e5;
  private static final double FWHM_PER_SIGMA = 2 * Math.sqrt(2 * Math.log(2));
  private static final double PIXEL_PX2 = 1 / 12.0;

  static Gear draw(Dice dice) {
    double width = dice.pick(750, 840, 960);
    return new Gear(
        dice.pick(14, 20, 24, 35, 50, 85, 135),
        dice.pick(1.8, 2.8, 4),
        Math.rint(10 * dice.scaled(5, 20)) / 10,
        (int) width,
        (int) (width * 2 / 3),
        dice.between(1.3, 3.2),
        dice.chance(0.7) ? 0 : dice.between(3, 5));
  }

  /** Image px for one radian at the centre. */
  double focalLengthPx() {
    return focalLengthMm * 1000 / pitchMicrons;
  }

  /** Second moment of the core, pixel included (Moffat: α²/(2(β-2))). */
  double corePx2() {
    if (moffatBeta == 0) {
      double sigma = coreFwhmPx / FWHM_PER_SIGMA;
      return sigma * sigma + PIXEL_PX2;
    }
    double alpha = coreFwhmPx / (2 * Math.sqrt(Math.pow(2, 1 / moffatBeta) - 1));
    return alpha * alpha / (2 * (moffatBeta - 2)) + PIXEL_PX2;
  }

  /** Half the frame's width as seen from the lens, degrees. */
  double halfWidthDeg() {
    return Math.toDegrees(Math.atan(widthPx / 2.0 / focalLengthPx()));
  }

  double halfHeightDeg() {
    return Math.toDegrees(Math.atan(heightPx / 2.0 / focalLengthPx()));
  }

  /** Focus error at the sensor that gives a disc of this diameter. */
  double micronsOfDisc(double discPx) {
    return discPx * fNumber * pitchMicrons;
  }

  CameraPlan camera() {
    return new CameraPlan(
        "Larkmoor",
        "Vesper " + widthPx,
        widthPx,
        heightPx,
        pitchMicrons,
        Mosaic.MONO,
        Throughput.GREY,
        2,
        ISO,
        4,
        0.05,
        512,
        16383,
        ZERO_POINT,
        20,
        0.005);
  }

  LensPlan lens(Aberrations off, double vignettingStops, double distortionK1) {
    return new LensPlan(
        "Larkmoor " + Math.round(focalLengthMm) + " mm",
        focalLengthMm,
        fNumber,
        coreFwhmPx,
        moffatBeta,
        distortionK1,
        micronsOfDisc(off.tiltRightPx()),
        micronsOfDisc(off.tiltDownPx()),
        micronsOfDisc(off.curvaturePx()),
        micronsOfDisc(off.astigmatismPx()),
        off.comaPx(),
        0,
        vignettingStops);
  }

  /**
   * What the lens does away from its axis, as discs at the edge (tilt) or corner.
   *
   * @param tiltRightPx at the right edge
   * @param tiltDownPx at the lower edge
   * @param curvaturePx at the corner
   * @param astigmatismPx at the corner, between the two surfaces
   * @param comaPx at the corner
   */
  record Aberrations(
      double tiltRightPx,
      double tiltDownPx,
      double curvaturePx,
      double astigmatismPx,
      double comaPx) {

    /** Those of a good lens: visible only in measurements. */
    static Aberrations good(Dice dice) {
      return new Aberrations(
          dice.between(-0.6, 0.6),
          dice.between(-0.5, 0.5),
          dice.between(-1, 1),
          dice.between(-1.2, 1.2),
          dice.between(-0.5, 0.5));
    }
  }
}
