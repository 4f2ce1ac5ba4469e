package rondure.blur;

import java.util.Optional;
import java.util.stream.Stream;
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
 */
record FaintTail(double spin2Px2, double errorPx2, double angleRad) {
  /** Fewer stars average too little noise away. */
  private static final int LEAST_STARS = 15;

  /** Widths along the long axis: reaches the path, not the neighbours. */
  private static final double REACH_PER_FWHM = 2.2;

  private static final double SURE_SIGMAS = 3.5;

  /** Of a simulated hand on the shutter, this share of the stretch is near enough to be seen. */
  private static final double SEEN_SHARE = 0.5;

  private static final double LEAST_PX2 = 0.2;

  /**
   * Developing (interpolated colours, blocks of 8 x 8 px) makes neighbouring pixels err together:
   * sums over the rim err more than its pixels' scatter says.
   */
  private static final double ERROR_IF_DEVELOPED = 2;

  /** A path is the same over the frame: each zone's average shows at least so much of it. */
  private static final double IN_EACH_ZONE = 0.5;

  /** Beside a wider core, misfits of the star's model look like tails, half-maximum px. */
  private static final double WIDEST_CORE_PX = 4;

  /** Beside stars drawn out so far lie the neighbours' ends: no tail can be told. */
  private static final double LEAST_ROUNDNESS = 0.45;

  /** Stretch of the whole path, with what lies beyond the average star's picture, px². */
  double wholePx2() {
    return spin2Px2 / SEEN_SHARE;
  }

  /**
   * The tail of a field's average star, when it has one beyond doubt.
   *
   * @param developed whether its file was developed
   */
  static Optional<FaintTail> of(StarField field, FieldShape shape, boolean developed) {
    double sigmas = developed ? ERROR_IF_DEVELOPED * SURE_SIGMAS : SURE_SIGMAS;
    return read(field, shape)
        .filter(tail -> shape.minorFwhmPx() <= WIDEST_CORE_PX)
        .filter(tail -> shape.roundness() >= LEAST_ROUNDNESS)
        .filter(tail -> tail.spin2Px2() > Math.max(LEAST_PX2, shape.moments().spin2Px2()))
        .filter(tail -> tail.spin2Px2() > sigmas * tail.errorPx2())
        .filter(tail -> tail.inEachZone(field, shape));
  }

  /** The stretch of the average beyond the single stars', whether it means something or not. */
  static Optional<FaintTail> read(StarField field, FieldShape shape) {
    return read(field, shape, AverageStar.Zone.WHOLE);
  }

  private static Optional<FaintTail> read(
      StarField field, FieldShape shape, AverageStar.Zone zone) {
    double fwhm =
        RobustStats.median(field.stars().stream().mapToDouble(Star::fwhmMajorPx).toArray());
    return field.averageStars().stream()
        .filter(average -> average.zone() == zone)
        .filter(average -> average.starCount() >= LEAST_STARS)
        .findFirst()
        .map(average -> beyond(shape.moments(), new AverageGrid(average, REACH_PER_FWHM * fwhm)));
  }

  private boolean inEachZone(StarField field, FieldShape shape) {
    return Stream.of(AverageStar.Zone.CENTRE, AverageStar.Zone.MIDWAY)
        .flatMap(zone -> read(field, shape, zone).stream())
        .mapToDouble(own -> own.spin2Px2() * Math.cos(2 * (own.angleRad() - angleRad)))
        .allMatch(along -> along >= IN_EACH_ZONE * spin2Px2);
  }

  private static FaintTail beyond(Moments single, AverageGrid grid) {
    Moments average = grid.moments();
    double along = (average.xxPx2() - average.yyPx2() - single.xxPx2() + single.yyPx2()) / 2;
    double diagonal = average.xyPx2() - single.xyPx2();
    return new FaintTail(
        Math.hypot(along, diagonal), grid.spin2ErrorPx2(), Math.atan2(diagonal, along) / 2);
  }
}
