package rondure.blur;

import java.util.Optional;
import rondure.base.Moments;
import rondure.base.RobustStats;
import rondure.stars.AverageStar;
import rondure.stars.Star;
import rondure.stars.StarField;

/**
 * Light too faint and too far out for the shape of a single star, seen in the average of many: the
 * path of a hand on the shutter or of a short knock.
 *
 * @param spin2Px2 stretch (spin-2 length) of the average star beyond the median star's
 * @param errorPx2 its standard error from the noise of the average's rim
 * @param angleRad direction of that stretch, rad from +x towards +y
 * @param roundPx2 mean of the average star's second moments over all directions
 */
record FaintTail(double spin2Px2, double errorPx2, double angleRad, double roundPx2) {
  /** Fewer stars average too little noise away. */
  private static final int LEAST_STARS = 15;

  /** Widths along the long axis: reaches the path, not the neighbours. */
  private static final double REACH_PER_FWHM = 2.2;

  private static final double SURE_SIGMAS = 3.5;

  /** Of a simulated hand on the shutter, this share of the stretch is near enough to be seen. */
  private static final double SEEN_SHARE = 0.5;

  private static final double LEAST_PX2 = 0.2;

  /** Widening over stretch: 1 along one line; wings beyond the fitted star's add to it. */
  private static final double LEAST_WIDENING = 0.5;

  /** The stretch in a zone over that of the whole frame. */
  private static final double LEAST_IN_ZONE = 0.5;

  /** Beside stars drawn out so far lie the neighbours' ends: no tail can be told. */
  private static final double LEAST_ROUNDNESS = 0.45;

  /** Beside a wider core, misfits of the star's model look like tails, half-maximum px. */
  private static final double WIDEST_CORE_PX = 4;

  /** Stretch of the whole path, with what lies beyond the average star's picture, px². */
  double wholePx2() {
    return spin2Px2 / SEEN_SHARE;
  }

  /** The tail of a field's average star, when it has one beyond doubt. */
  static Optional<FaintTail> of(StarField field, FieldShape shape) {
    return read(field, shape)
        .filter(tail -> shape.minorFwhmPx() <= WIDEST_CORE_PX)
        .filter(tail -> shape.roundness() >= LEAST_ROUNDNESS)
        .filter(tail -> tail.spin2Px2() > Math.max(LEAST_PX2, shape.moments().spin2Px2()))
        .filter(tail -> tail.spin2Px2() > SURE_SIGMAS * tail.errorPx2())
        .filter(tail -> tail.widens(shape))
        .filter(tail -> tail.isAllOver(field, shape));
  }

  /**
   * Light added along a path widens as much across all directions as it stretches (its tensor has
   * no negative axis); noise stretches without widening.
   */
  private boolean widens(FieldShape shape) {
    return roundPx2 - shape.moments().meanPx2() > LEAST_WIDENING * spin2Px2;
  }

  /** The camera moves all stars alike; a neighbour of one star shows in that star's zone alone. */
  private boolean isAllOver(StarField field, FieldShape shape) {
    return field.averageStars().stream()
        .filter(average -> average.starCount() >= LEAST_STARS)
        .map(average -> beyond(field, shape, average))
        .allMatch(zone -> along(zone) > LEAST_IN_ZONE * spin2Px2 - 2 * zone.errorPx2);
  }

  /** Another's stretch in this one's direction. */
  private double along(FaintTail other) {
    return other.spin2Px2 * Math.cos(2 * (other.angleRad - angleRad));
  }

  /** The stretch of the average beyond the single stars', whether it means something or not. */
  static Optional<FaintTail> read(StarField field, FieldShape shape) {
    return field.averageStars().stream()
        .filter(average -> average.zone() == AverageStar.Zone.WHOLE)
        .filter(average -> average.starCount() >= LEAST_STARS)
        .findFirst()
        .map(average -> beyond(field, shape, average));
  }

  private static FaintTail beyond(StarField field, FieldShape shape, AverageStar star) {
    double fwhm =
        RobustStats.median(field.stars().stream().mapToDouble(Star::fwhmMajorPx).toArray());
    AverageGrid grid = new AverageGrid(star, REACH_PER_FWHM * fwhm);
    Moments average = grid.moments();
    Moments single = shape.moments();
    double along = (average.xxPx2() - average.yyPx2() - single.xxPx2() + single.yyPx2()) / 2;
    double diagonal = average.xyPx2() - single.xyPx2();
    return new FaintTail(
        Math.hypot(along, diagonal),
        grid.spin2ErrorPx2(),
        Math.atan2(diagonal, along) / 2,
        average.meanPx2());
  }
}
