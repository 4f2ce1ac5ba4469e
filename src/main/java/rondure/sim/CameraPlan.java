package rondure.sim;

import java.util.Objects;

/**
 * The camera of a night.
 *
 * @param maker invented maker
 * @param model invented model
 * @param widthPx sensor width
 * @param heightPx sensor height
 * @param pixelPitchMicrons distance of photosites
 * @param mosaic colour filters
 * @param throughput what the filters let through
 * @param electronsPerCount gain at {@code baseIso}; falls in proportion to the ISO in use
 * @param baseIso ISO at which the gain is given
 * @param readNoiseElectrons r.m.s. noise of reading one photosite
 * @param darkElectronsPerSecond dark current of an ordinary photosite
 * @param blackLevelCounts code value of no light
 * @param whiteLevelCounts highest code value
 * @param zeroPointElectronsPerSecondPerCm2 electrons from a star of magnitude 0 for each cm² of
 *     aperture; about 1e6 for a V = 0 star over a 1000 Å band (common practice)
 * @param hotPixelsPerMegapixel photosites with a large dark current
 * @param responseSpread r.m.s. spread of the photosites' response (0 = none)
 */
public record CameraPlan(
    String maker,
    String model,
    int widthPx,
    int heightPx,
    double pixelPitchMicrons,
    Mosaic mosaic,
    Throughput throughput,
    double electronsPerCount,
    double baseIso,
    double readNoiseElectrons,
    double darkElectronsPerSecond,
    int blackLevelCounts,
    int whiteLevelCounts,
    double zeroPointElectronsPerSecondPerCm2,
    double hotPixelsPerMegapixel,
    double responseSpread) {

  public CameraPlan {
    Objects.requireNonNull(maker, "maker");
    Objects.requireNonNull(model, "model");
    Checks.within("widthPx", widthPx, 16, 20000);
    Checks.within("heightPx", heightPx, 16, 20000);
    Checks.positive("pixelPitchMicrons", pixelPitchMicrons);
    mosaic = Objects.requireNonNullElse(mosaic, Mosaic.MONO);
    throughput = Objects.requireNonNullElse(throughput, Throughput.GREY);
    Checks.positive("electronsPerCount", electronsPerCount);
    Checks.positive("baseIso", baseIso);
    Checks.notNegative("readNoiseElectrons", readNoiseElectrons);
    Checks.notNegative("darkElectronsPerSecond", darkElectronsPerSecond);
    Checks.within("blackLevelCounts", blackLevelCounts, 0, 65000);
    Checks.within("whiteLevelCounts", whiteLevelCounts, blackLevelCounts + 1, 65535);
    Checks.positive("zeroPointElectronsPerSecondPerCm2", zeroPointElectronsPerSecondPerCm2);
    Checks.notNegative("hotPixelsPerMegapixel", hotPixelsPerMegapixel);
    Checks.within("responseSpread", responseSpread, 0, 0.2);
  }

  /** Electrons for one count at the given ISO. */
  double electronsPerCount(double iso) {
    return electronsPerCount * baseIso / iso;
  }

  /** Half the sensor's diagonal in px: the distance of a corner from the centre. */
  double cornerRadiusPx() {
    return Math.hypot(widthPx, heightPx) / 2;
  }

  /** Column of the optical axis; the centre of the first pixel is at 0. */
  double centreX() {
    return (widthPx - 1) / 2.0;
  }

  /** Row of the optical axis; the centre of the first pixel is at 0. */
  double centreY() {
    return (heightPx - 1) / 2.0;
  }
}
