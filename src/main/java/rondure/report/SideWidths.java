package rondure.report;

import java.util.List;
import java.util.Optional;
import rondure.base.Orientation;
import rondure.base.RobustStats;
import rondure.stars.Star;
import rondure.stars.StarField;

/**
 * Widths of a frame's stars near two opposite borders or corners, whatever made them.
 *
 * @param towards eighth of a turn of one, as displayed: 0 to the right, 2 down
 * @param widthThere median there, px
 * @param widthAway median at the opposite one
 */
record SideWidths(int towards, double widthThere, double widthAway) {
  private static final int LEAST_STARS = 8;

  /** Beyond this share of the way to the border. */
  private static final double OUTER = 0.5;

  private static final double DIFFER = 1.08;

  /** Empty where there are too few stars. */
  static Optional<SideWidths> of(StarField field, Orientation orientation, int towards) {
    double angle = towards * Math.PI / 4;
    List<Double> way = LensModel.stored(orientation, Math.cos(angle), Math.sin(angle));
    double reach =
        Math.abs(way.get(0)) * field.widthPx() / 2 + Math.abs(way.get(1)) * field.heightPx() / 2;
    double[] there = widths(field, way, OUTER * reach);
    double[] away = widths(field, List.of(-way.get(0), -way.get(1)), OUTER * reach);
    return Math.min(there.length, away.length) < LEAST_STARS
        ? Optional.empty()
        : Optional.of(new SideWidths(towards, RobustStats.median(there), RobustStats.median(away)));
  }

  private static double[] widths(StarField field, List<Double> way, double beyondPx) {
    double centreX = (field.widthPx() - 1) / 2.0;
    double centreY = (field.heightPx() - 1) / 2.0;
    return field.stars().stream()
        .filter(
            star ->
                (star.xPx() - centreX) * way.get(0) + (star.yPx() - centreY) * way.get(1)
                    > beyondPx)
        .mapToDouble(Star::fwhmPx)
        .toArray();
  }

  /** Whether one side is softer to the eye. */
  boolean differ() {
    return softerPx() >= DIFFER * sharperPx();
  }

  /** Eighth of the softer side. */
  int softer() {
    return widthThere >= widthAway ? towards : LensSides.opposite(towards);
  }

  double softerPx() {
    return Math.max(widthThere, widthAway);
  }

  double sharperPx() {
    return Math.min(widthThere, widthAway);
  }
}
