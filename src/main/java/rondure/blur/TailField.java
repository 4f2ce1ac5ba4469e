package rondure.blur;

import java.util.List;
import rondure.base.Moments;

/**
 * A faint tail over the field: the camera's own, alike in every zone, beside what a lens's tails
 * leave over.
 *
 * <p>A camera that turns moves all stars alike. Coma draws them out along the radius, the more the
 * farther out: the average of stars even about the middle is round, but few stars never are. Of a
 * tail κ r² along each star's radius the average keeps κ ⟨r² e^(2iφ)⟩, known from the stars'
 * places. Both are fitted together: t(zone) = T + κ ⟨r² e^(2iφ)⟩, κ = 0 ± 1 beforehand, and only
 * what T has beyond doubt is the camera's.
 *
 * @param reachPx amplitude of the swing as it begins
 * @param along cos 2φ part of the camera's τ/T
 * @param diagonal sin 2φ part
 * @param error standard error of either
 * @param certainty χ² of the camera's part, over the misfit where that is above 1
 * @param chi2 of everything
 * @param misfit what χ² is to be divided by: 1, more where the zones are off more than their errors
 * @param swingPx2 stretch (spin-2) of the camera's part
 * @param alongPx2 stretch of the average star, with that of its core: cos 2φ part
 * @param diagonalPx2 the same, sin 2φ part
 */
record TailField(
    double reachPx,
    double along,
    double diagonal,
    double error,
    double certainty,
    double chi2,
    double misfit,
    double swingPx2,
    double alongPx2,
    double diagonalPx2) {

  /**
   * A zone.
   *
   * @param tail fitted in it
   * @param radialX mean of r² cos 2φ over its stars, r in half diagonals about the frame's middle
   * @param radialY the same of r² sin 2φ
   */
  record Zone(TailInZone tail, double radialX, double radialY) {
    double weight() {
      return 1 / (tail.error() * tail.error());
    }

    double radialSquare() {
      return radialX * radialX + radialY * radialY;
    }

    /** Of the zone's tail and its radial direction. */
    double radialTail() {
      return radialX * tail.along() + radialY * tail.diagonal();
    }

    double square(double along, double diagonal) {
      double x = tail.along() - along;
      double y = tail.diagonal() - diagonal;
      return weight() * (x * x + y * y);
    }
  }

  static TailField of(double reachPx, List<Zone> zones) {
    double all = sum(zones, zone -> 1);
    double bx = sum(zones, Zone::radialX);
    double by = sum(zones, Zone::radialY);
    double k = sum(zones, Zone::radialSquare) + 1;
    double radial = sum(zones, Zone::radialTail);
    double xx = all - bx * bx / k;
    double xy = -bx * by / k;
    double yy = all - by * by / k;
    double rightX = sum(zones, zone -> zone.tail().along()) - bx * radial / k;
    double rightY = sum(zones, zone -> zone.tail().diagonal()) - by * radial / k;
    double determinant = Math.max(1e-300, xx * yy - xy * xy);
    double x = (yy * rightX - xy * rightY) / determinant;
    double y = (xx * rightY - xy * rightX) / determinant;
    double lens = (radial - bx * x - by * y) / k;
    double misfit = 0;
    for (Zone zone : zones) {
      misfit += zone.square(x + lens * zone.radialX(), y + lens * zone.radialY());
    }
    double inZones = zones.stream().mapToDouble(zone -> zone.tail().chi2()).sum();
    double freedom = zones.stream().mapToDouble(zone -> zone.tail().freedom()).sum();
    double scale =
        Math.max(1, Math.max(misfit / Math.max(1, 2 * zones.size() - 3), inZones / freedom));
    double unit = sum(zones, zone -> zone.tail().px2PerPart()) / all;
    return new TailField(
        reachPx,
        x,
        y,
        Math.sqrt(scale * (xx + yy) / (2 * determinant)),
        (x * (xx * x + xy * y) + y * (xy * x + yy * y)) / scale,
        inZones + misfit,
        Math.max(1, inZones / freedom),
        unit * Math.hypot(x, y),
        unit * x + sum(zones, zone -> zone.tail().coreAlongPx2()) / all,
        unit * y + sum(zones, zone -> zone.tail().coreDiagonalPx2()) / all);
  }

  private static double sum(List<Zone> zones, java.util.function.ToDoubleFunction<Zone> of) {
    return zones.stream().mapToDouble(zone -> zone.weight() * of.applyAsDouble(zone)).sum();
  }

  /** Log of how much likelier another reach is. */
  double logGainOf(TailField other) {
    return (chi2 - other.chi2) / 2 / misfit;
  }

  /** Part τ/T of the exposure. */
  double part() {
    return Math.hypot(along, diagonal);
  }

  /** Stretch along the tail that the single stars' moments do not have, px². */
  double beyondPx2(Moments single) {
    double x = alongPx2 - (single.xxPx2() - single.yyPx2()) / 2;
    double y = diagonalPx2 - single.xyPx2();
    return (x * along + y * diagonal) / Math.max(1e-9, part());
  }

  double angleRad() {
    return Math.atan2(diagonal, along) / 2;
  }
}
