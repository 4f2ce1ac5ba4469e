package rondure.sim;

/** How much light one exposure gathers, and where directions fall on the sensor. */
final class Optics {
  private static final double ARCSEC_PER_RADIAN = 180 * 3600 / Math.PI;

  private final NightPlan plan;
  private final ImagePoint image;
  private final double zeroPointElectrons;

  Optics(NightPlan plan, Exposure exposure) {
    this.plan = plan;
    this.image = new ImagePoint(plan);
    double apertureCm = plan.lens().focalLengthMm() / exposure.fNumber() / 10;
    this.zeroPointElectrons =
        plan.camera().zeroPointElectronsPerSecondPerCm2()
            * Math.PI
            / 4
            * apertureCm
            * apertureCm
            * exposure.openSeconds();
  }

  ImagePoint image() {
    return image;
  }

  /** Electrons of the whole exposure from a star on the axis at the zenith, without filters. */
  double starElectrons(double magnitude) {
    return zeroPointElectrons * Math.pow(10, -0.4 * magnitude);
  }

  /** Electrons from the zenith sky in a pixel on the axis, without filters. */
  double zenithSkyElectrons() {
    double pixelArcsec = ARCSEC_PER_RADIAN / plan.pixelsPerRadian();
    return starElectrons(plan.sky().zenithMagPerArcsec2()) * pixelArcsec * pixelArcsec;
  }

  /** Share of light that the lens passes at a place of the sensor. */
  double vignetting(double xPx, double yPx) {
    CameraPlan camera = plan.camera();
    double share =
        Math.hypot(xPx - camera.centreX(), yPx - camera.centreY()) / camera.cornerRadiusPx();
    return Math.pow(2, -plan.lens().vignettingStops() * share * share);
  }
}
