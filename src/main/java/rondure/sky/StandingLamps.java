package rondure.sky;

import java.util.List;
import rondure.stars.SkyMask;

/**
 * Lamps that stay on the sensor while the stars move: proof that the camera stood.
 *
 * <p>They are as wide as a star, or too bright, cut or crowded for a width to be told, and stand on
 * the ground or within a mesh cell of it; hot pixels, which stay with any camera, are narrower and
 * stand anywhere.
 */
public final class StandingLamps {
  /** Of a scene's frames: lamps that only stay for a while do not speak for the others. */
  private static final double LEAST_SHARE = 0.6;

  private StandingLamps() {}

  /** How many a scene shows; 0 where its sky was not seen to move. */
  public static int count(StaticReport report) {
    if (report.finding() != StaticReport.Finding.SKY_MOVES || report.fields().isEmpty()) {
      return 0;
    }
    SkyMask mask = report.fields().get(0).mask();
    double least = LEAST_SHARE * report.fields().size();
    List<StaticSpot> wide =
        report.spots().stream()
            .filter(spot -> spot.kind() == StaticSpot.Kind.GROUND_LIGHT)
            .filter(spot -> spot.seenCount() >= least)
            .toList();
    long aloft = wide.stream().filter(spot -> insideSky(mask, spot)).count();
    long low = wide.size() - aloft;
    // Developed hot pixels may be as wide as stars; they stand in the sky as densely as below it.
    return (int) Math.max(0, low - (long) Math.ceil(aloft * groundOverSky(mask)));
  }

  /** Area on the ground or near it over that inside the sky. */
  private static double groundOverSky(SkyMask mask) {
    int inside = 0;
    int cells = 0;
    for (int row = 0; row < mask.rows().size(); row++) {
      for (int column = 0; column < mask.rows().get(row).length(); column++) {
        inside += insideSky(mask, column, row) ? 1 : 0;
        cells++;
      }
    }
    return (cells - inside) / Math.max(1.0, inside);
  }

  /** In a sky cell, with sky all around it. */
  static boolean insideSky(SkyMask mask, StaticSpot spot) {
    return insideSky(
        mask,
        (int) Math.floor(spot.xPx() / mask.meshPx()),
        (int) Math.floor(spot.yPx() / mask.meshPx()));
  }

  private static boolean insideSky(SkyMask mask, int column, int row) {
    for (int i = -1; i <= 1; i++) {
      for (int j = -1; j <= 1; j++) {
        if (!mask.isSkyCell(column + i, row + j)) {
          return false;
        }
      }
    }
    return true;
  }
}
