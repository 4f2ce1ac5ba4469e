package rondure.sky;

import java.util.Optional;
import rondure.base.RobustStats;
import rondure.stars.SkyMask;

/**
 * Single photosites that shine by themselves: points by nature, so what width they have was given
 * them when the picture was made (demosaicing, noise reduction, resampling, compression).
 *
 * @param count places well inside the sky, where no lamp stands, that stay on the sensor
 * @param fwhmPx their median half-maximum width, 0 when they are single photosites
 */
public record HotPixels(int count, double fwhmPx) {
  private static final int LEAST_COUNT = 3;

  public HotPixels {
    if (!(count > 0 && fwhmPx >= 0)) {
      throw new IllegalArgumentException(
          "count must be > 0, fwhmPx >= 0, were " + count + ", " + fwhmPx);
    }
  }

  /** Those of a scene; empty where fewer than three were seen or the sky did not move. */
  public static Optional<HotPixels> of(StaticReport report) {
    if (report.finding() != StaticReport.Finding.SKY_MOVES || report.fields().isEmpty()) {
      return Optional.empty();
    }
    SkyMask mask = report.fields().get(0).mask();
    double[] widths =
        report.spots().stream()
            .filter(spot -> StandingLamps.insideSky(mask, spot))
            .flatMap(spot -> spot.fwhmPx().stream())
            .mapToDouble(width -> width)
            .toArray();
    return widths.length < LEAST_COUNT
        ? Optional.empty()
        : Optional.of(new HotPixels(widths.length, RobustStats.median(widths)));
  }
}
