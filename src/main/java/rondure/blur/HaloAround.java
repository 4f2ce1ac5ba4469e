package rondure.blur;

import java.util.List;
import rondure.base.Moments;
import rondure.stars.Surroundings;

/**
 * Rings of light about the stars that stand alone ({@link Surroundings}), beyond the reach of the
 * average star, in half-maximum widths. Light is over the star's flux and less that of their
 * ground, so a model is asked for the same difference.
 */
final class HaloAround {
  /** Wider halos lie under the ground, px. */
  private static final double WIDEST_FWHM_PX = 24;

  /** No core's wings and no halo are known to better than this share of their light. */
  private static final double MODEL_SHARE = 0.1;

  /** Neighbours and the mesh of the sky leave as much, over the peak of a core. */
  private static final double LEAST_ERROR = 0.0003;

  private final List<Surroundings.Ring> rings;
  private final double unitPx;

  private HaloAround(List<Surroundings.Ring> rings, double unitPx) {
    this.rings = rings;
    this.unitPx = unitPx;
  }

  /**
   * @param unitPx half-maximum width of the stars, px
   * @param from what lies nearer, in such widths, the average star shows
   */
  static HaloAround of(Surroundings surroundings, double unitPx, double from) {
    return new HaloAround(
        surroundings.rings().stream().filter(ring -> ring.fromPx() >= from * unitPx).toList(),
        unitPx);
  }

  int size() {
    return rings.size();
  }

  /** Whether halos of this σ, in half-maximum widths, would show. */
  boolean reaches(double sigma) {
    return size() > 0 && sigma * unitPx * Moments.FWHM_PER_SIGMA <= WIDEST_FWHM_PX;
  }

  /** Light over the flux, for an area of one half-maximum width squared. */
  double light(int ring) {
    return rings.get(ring).lightPerPx2() * unitPx * unitPx;
  }

  /**
   * 1 over the variance of a ring's misfit, in units of the core's peak.
   *
   * @param flux of the star, in peaks times half-maximum widths squared
   */
  double weight(int ring, double flux) {
    double noise = rings.get(ring).errorPerPx2() * unitPx * unitPx * flux;
    double model = MODEL_SHARE * light(ring) * flux;
    return 1 / (noise * noise + model * model + LEAST_ERROR * LEAST_ERROR);
  }

  /** What a profile of height 1 shows in each ring, that of the ground taken off. */
  double[] shown(double inverseBeta, double width) {
    double all = HaloFit.lightOfCore(inverseBeta, width);
    double ground =
        mean(Surroundings.GROUND_FROM_PX, Surroundings.GROUND_TO_PX, inverseBeta, width);
    return rings.stream()
        .mapToDouble(r -> all * (mean(r.fromPx(), r.toPx(), inverseBeta, width) - ground))
        .toArray();
  }

  /** Mean over a ring, over the profile's whole light. */
  private double mean(double fromPx, double toPx, double inverseBeta, double width) {
    double from = fromPx / unitPx;
    double to = toPx / unitPx;
    double inside =
        HaloFit.inside(to / width, inverseBeta) - HaloFit.inside(from / width, inverseBeta);
    return inside / (Math.PI * (to * to - from * from));
  }
}
