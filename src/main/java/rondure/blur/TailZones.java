package rondure.blur;

import java.util.List;
import java.util.function.ToDoubleFunction;
import rondure.stars.AverageStar;
import rondure.stars.Star;
import rondure.stars.StarField;

/**
 * The rings of the average stars of a frame's centre, middle and edge, and where their stars are.
 */
final class TailZones {
  private TailZones() {}

  /**
   * A zone's average star.
   *
   * @param rings of it
   * @param core how a smear would stretch it
   * @param radialX see {@link TailField.Zone}
   * @param radialY the same
   */
  record Rings(StretchRings rings, CoreStretch core, double radialX, double radialY) {
    TailField.Zone fitted(double reachPx, double sigmaPx) {
      return new TailField.Zone(
          TailInZone.of(rings, core.perPx2(), reachPx, sigmaPx), radialX, radialY);
    }
  }

  static List<Rings> of(StarField field, double fwhmPx) {
    return field.averageStars().stream()
        .filter(star -> star.zone() != AverageStar.Zone.WHOLE)
        .map(star -> rings(field, star, fwhmPx))
        .toList();
  }

  private static Rings rings(StarField field, AverageStar average, double fwhmPx) {
    // The brightest of the zone, as they were averaged.
    List<Star> stars =
        field.stars().stream()
            .filter(star -> isIn(average.zone(), FieldShape.radius(field, star)))
            .limit(average.starCount())
            .toList();
    StretchRings rings = new StretchRings(average, fwhmPx);
    double x = mean(stars, star -> square(dx(field, star), field) - square(dy(field, star), field));
    double y = mean(stars, star -> 2 * dx(field, star) * dy(field, star) / square(field));
    return new Rings(rings, CoreStretch.of(rings), x, y);
  }

  private static boolean isIn(AverageStar.Zone zone, double radius) {
    return switch (zone) {
      case WHOLE -> true;
      case CENTRE -> radius < FieldShape.CENTRE_LIMIT;
      case MIDWAY -> radius >= FieldShape.CENTRE_LIMIT && radius <= FieldShape.EDGE_LIMIT;
      case EDGE -> radius > FieldShape.EDGE_LIMIT;
    };
  }

  private static double dx(StarField field, Star star) {
    return star.xPx() - (field.widthPx() - 1) / 2.0;
  }

  private static double dy(StarField field, Star star) {
    return star.yPx() - (field.heightPx() - 1) / 2.0;
  }

  private static double square(double px, StarField field) {
    return px * px / square(field);
  }

  /** Of half the diagonal, px². */
  private static double square(StarField field) {
    double half = Math.hypot(field.widthPx(), field.heightPx()) / 2;
    return half * half;
  }

  private static double mean(List<Star> stars, ToDoubleFunction<Star> of) {
    return stars.stream().mapToDouble(of).average().orElse(0);
  }
}
