package rondure.blur;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import rondure.base.Moments;
import rondure.base.RobustStats;
import rondure.stars.Star;
import rondure.stars.StarField;

/**
 * The stars of a frame in a few numbers: medians over its measured stars, stored coordinates.
 *
 * @param starCount measured stars
 * @param fwhmPx half-maximum width √(major · minor)
 * @param roundness half-maximum axis ratio b/a typical of its stars, 1 = round; what differs
 *     between neighbouring stars (noise, sampling), and would make round stars look oval, is taken
 *     off
 * @param moments median tensor, component by component (noise averages out), px²
 * @param smearErrorPx2 standard error of the tensor's spin-2 part
 * @param coherence length of the mean unit vector of doubled directions: 0 = every way, 1 = one way
 * @param minorFwhmPx half-maximum width across the common direction
 * @param fwhmCentrePx median inside 0.4 of the half diagonal, from at least 5 stars
 * @param fwhmEdgePx median beyond 0.75 of the half diagonal, from at least 5 stars
 */
public record FieldShape(
    int starCount,
    double fwhmPx,
    double roundness,
    Moments moments,
    double smearErrorPx2,
    double coherence,
    double minorFwhmPx,
    Optional<Double> fwhmCentrePx,
    Optional<Double> fwhmEdgePx) {

  /** Fewest stars for a median of a zone. */
  static final int LEAST_STARS_IN_ZONE = 5;

  /** Outer limit of the centre, as a share of the half diagonal. */
  public static final double CENTRE_LIMIT = 0.4;

  /** Inner limit of the edge, as a share of the half diagonal. */
  public static final double EDGE_LIMIT = 0.75;

  /** √(π/2): standard error of a median over that of a mean, for Gaussian scatter. */
  private static final double MEDIAN_ERROR_FACTOR = Math.sqrt(Math.PI / 2);

  /** Smallest variance that a star can have: light spread evenly over one pixel, 1/12 px². */
  private static final double PIXEL_BOX_PX2 = 1 / 12.0;

  /**
   * Summary of a field.
   *
   * @throws IllegalArgumentException when the field has no measured star
   */
  public static FieldShape of(StarField field) {
    if (field.stars().isEmpty()) {
      throw new IllegalArgumentException("a field without measured stars has no shape");
    }
    return of(field, field.stars());
  }

  /**
   * The same of a ring of the field alone; empty with fewer than 5 stars.
   *
   * @param inner its stars are farther from the centre than this, in half diagonals
   * @param outer and no farther than this
   */
  public static Optional<FieldShape> between(StarField field, double inner, double outer) {
    List<Star> stars =
        field.stars().stream()
            .filter(star -> radius(field, star) > inner && radius(field, star) <= outer)
            .toList();
    return stars.size() < LEAST_STARS_IN_ZONE ? Optional.empty() : Optional.of(of(field, stars));
  }

  private static FieldShape of(StarField field, List<Star> stars) {
    Predicate<Star> centre = star -> radius(field, star) <= CENTRE_LIMIT;
    Predicate<Star> edge = star -> radius(field, star) > EDGE_LIMIT;
    return new FieldShape(
        stars.size(),
        median(stars, Star::fwhmPx),
        Roundness.of(stars),
        medianTensor(stars, Star::moments),
        smearError(stars),
        coherence(stars),
        minorFwhm(stars),
        zone(stars, centre),
        zone(stars, edge));
  }

  /** Second moment across the common direction, at least a pixel's box, px². */
  public double minorPx2() {
    return Math.max(PIXEL_BOX_PX2, moments.minorPx2());
  }

  /** Distance of a star from the frame's centre over half the diagonal. */
  static double radius(StarField field, Star star) {
    double dx = star.xPx() - (field.widthPx() - 1) / 2.0;
    double dy = star.yPx() - (field.heightPx() - 1) / 2.0;
    return Math.hypot(dx, dy) / (Math.hypot(field.widthPx(), field.heightPx()) / 2);
  }

  private static Optional<Double> zone(List<Star> stars, Predicate<Star> inside) {
    List<Star> chosen = stars.stream().filter(inside).toList();
    return chosen.size() < LEAST_STARS_IN_ZONE
        ? Optional.empty()
        : Optional.of(median(chosen, Star::fwhmPx));
  }

  private static double minorFwhm(List<Star> stars) {
    Moments tensor = medianTensor(stars, Roundness::halfMaximumTensor);
    return Moments.FWHM_PER_SIGMA * Math.sqrt(Math.max(PIXEL_BOX_PX2, tensor.minorPx2()));
  }

  private static Moments medianTensor(List<Star> stars, Function<Star, Moments> tensor) {
    List<Moments> tensors = stars.stream().map(tensor).toList();
    return new Moments(
        RobustStats.median(tensors.stream().mapToDouble(Moments::xxPx2).toArray()),
        RobustStats.median(tensors.stream().mapToDouble(Moments::xyPx2).toArray()),
        RobustStats.median(tensors.stream().mapToDouble(Moments::yyPx2).toArray()));
  }

  private static double smearError(List<Star> stars) {
    double along = spread(stars, star -> (star.moments().xxPx2() - star.moments().yyPx2()) / 2);
    double diagonal = spread(stars, star -> star.moments().xyPx2());
    return MEDIAN_ERROR_FACTOR * Math.max(along, diagonal) / Math.sqrt(stars.size());
  }

  private static double coherence(List<Star> stars) {
    double cos = 0;
    double sin = 0;
    for (Star star : stars) {
      cos += Math.cos(2 * star.moments().positionAngleRad());
      sin += Math.sin(2 * star.moments().positionAngleRad());
    }
    return Math.hypot(cos, sin) / stars.size();
  }

  private static double median(List<Star> stars, ToDoubleFunction<Star> value) {
    return RobustStats.median(stars.stream().mapToDouble(value).toArray());
  }

  private static double spread(List<Star> stars, ToDoubleFunction<Star> value) {
    return RobustStats.madSigma(stars.stream().mapToDouble(value).toArray());
  }
}
