package rondure.blur;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import rondure.base.RobustStats;
import rondure.stars.AverageStar;
import rondure.stars.Star;
import rondure.stars.StarField;

/**
 * How large a disc of defocus is in the stars of frames that are equally sharp, by the form of
 * their average stars: a disc flattens the top and leaves the wings, a wider core does neither.
 */
final class DiscInProfile {
  private static final int LEAST_STARS = 15;
  private static final double FARTHEST_FWHM = 3;

  /** Cores are no Gaussians and no Moffat stars: share of the peak by which they may differ. */
  private static final double FORM_ERROR = 0.004;

  /** Average stars and single ones tell D² to this share alike. */
  private static final double TOLERANCE = 0.1;

  private static final int TOLERANCE_STEPS = 5;
  private static final double STEP = 0.05;

  /** Discs tried. */
  static final int SHARES = 18;

  /** Parameters of a fit: width and form of the core, amplitude, level. */
  private static final int FREE = 4;

  /** Sharpening and noise reduction make forms of their own. */
  private static final double DEVELOPED_WEIGHT = 0.1;

  /** Whether the discs are those inside {@link FieldShape#CENTRE_LIMIT}. */
  private final boolean centre;

  private final double[] discPx2 = new double[SHARES];
  private final double[] corePx2 = new double[SHARES];
  private final double[] coreFwhmPx = new double[SHARES];
  private final double[] loss = new double[SHARES];

  private DiscInProfile(List<ProfileFit> fits, boolean centre, double weight) {
    this.centre = centre;
    int free = 0;
    for (ProfileFit fit : fits) {
      free += fit.points() - FREE;
      List<ProfileFit.Best> bests =
          IntStream.range(0, SHARES).parallel().mapToObj(i -> fit.behind(STEP * i)).toList();
      for (int i = 0; i < SHARES; i++) {
        ProfileFit.Best best = bests.get(i);
        double disc = ProfileFit.discPx(STEP * i, best.coreFwhmPx());
        discPx2[i] += disc * disc / 16 / fits.size();
        corePx2[i] += best.core().secondMomentPx2(best.coreFwhmPx()) / fits.size();
        coreFwhmPx[i] += best.coreFwhmPx() / fits.size();
        loss[i] += best.chi2() / 2;
      }
    }
    double least = Double.POSITIVE_INFINITY;
    for (double one : loss) {
      least = Math.min(least, one);
    }
    double over = Math.max(1, 2 * least / Math.max(1, free));
    for (int i = 0; i < SHARES; i++) {
      loss[i] = weight * (loss[i] - least) / over;
    }
  }

  /**
   * Of frames that are equally sharp; empty where their average stars show too little.
   *
   * @param even whether the lens draws alike all over the field: else the centre is asked
   */
  static Optional<DiscInProfile> of(List<FrameEvidence> frames, boolean even) {
    boolean centre =
        !even
            && frames.stream()
                .allMatch(f -> average(f.field(), AverageStar.Zone.CENTRE).isPresent());
    AverageStar.Zone zone = centre ? AverageStar.Zone.CENTRE : AverageStar.Zone.WHOLE;
    double floor = FORM_ERROR * Math.sqrt(frames.size());
    List<ProfileFit> fits = new ArrayList<>();
    boolean developed = false;
    for (FrameEvidence frame : frames) {
      developed |= frame.developed();
      average(frame.field(), zone).ifPresent(star -> fits.add(fit(frame.field(), star, floor)));
    }
    double weight = developed ? DEVELOPED_WEIGHT : 1;
    return fits.isEmpty() ? Optional.empty() : Optional.of(new DiscInProfile(fits, centre, weight));
  }

  private static Optional<AverageStar> average(StarField field, AverageStar.Zone zone) {
    return field.averageStars().stream()
        .filter(star -> star.zone() == zone && star.starCount() >= LEAST_STARS)
        .findFirst();
  }

  private static ProfileFit fit(StarField field, AverageStar star, double floor) {
    double limit = star.zone() == AverageStar.Zone.CENTRE ? FieldShape.CENTRE_LIMIT : 2;
    List<Star> stars =
        field.stars().stream().filter(s -> FieldShape.radius(field, s) <= limit).toList();
    double fwhm = RobustStats.median(stars.stream().mapToDouble(Star::fwhmPx).toArray());
    AverageProfile profile = new AverageProfile(star, FARTHEST_FWHM * fwhm);
    return new ProfileFit(profile, fwhm, stretchPx2(stars), floor);
  }

  private static double stretchPx2(List<Star> stars) {
    double[] along =
        stars.stream().mapToDouble(s -> (s.moments().xxPx2() - s.moments().yyPx2()) / 2).toArray();
    double[] diagonal = stars.stream().mapToDouble(s -> s.moments().xyPx2()).toArray();
    return Math.hypot(RobustStats.median(along), RobustStats.median(diagonal));
  }

  /** Mean of a solution's discs where these stars are, over some frames, px². */
  double predictedPx2(SceneSolution solution, List<Integer> frames) {
    double limit = centre ? FieldShape.CENTRE_LIMIT : Double.POSITIVE_INFINITY;
    double[] discs = frames.stream().mapToDouble(k -> solution.discPx2(k, limit)).toArray();
    return RobustStats.median(discs);
  }

  /** Minus the logarithm of the likelihood of a disc, 0 at the best, between those tried. */
  double loss(double px2) {
    return between(loss, px2);
  }

  /** The same of the likeliest disc among those hardly larger or smaller. */
  double lossNear(double px2) {
    double least = Double.POSITIVE_INFINITY;
    for (int i = -TOLERANCE_STEPS; i <= TOLERANCE_STEPS; i++) {
      double near = px2 * (1 + TOLERANCE * i / TOLERANCE_STEPS);
      least = Math.min(least, between(loss, near));
    }
    return least;
  }

  /** Share of the core in the second moment of a star with a disc. */
  double coreShare(double px2) {
    double core = between(corePx2, px2);
    return core / (core + Math.min(px2, discPx2[SHARES - 1]));
  }

  /** The disc tried that has a place in order, smallest first, up to {@link #SHARES} of them. */
  double discPx2(int i) {
    return discPx2[i];
  }

  /** Half-maximum width of the core behind a disc, pixel not included. */
  double coreFwhmPx(double px2) {
    return between(coreFwhmPx, px2);
  }

  /** Half-maximum width of the core behind the disc that suits best, pixel not included. */
  double likeliestCoreFwhmPx() {
    int best = 0;
    for (int i = 1; i < SHARES; i++) {
      best = loss[i] < loss[best] ? i : best;
    }
    return coreFwhmPx[best];
  }

  private double between(double[] values, double px2) {
    for (int i = 1; i < SHARES; i++) {
      if (px2 < discPx2[i] && discPx2[i] > discPx2[i - 1]) {
        double part = Math.max(0, (px2 - discPx2[i - 1]) / (discPx2[i] - discPx2[i - 1]));
        return values[i - 1] + part * (values[i] - values[i - 1]);
      }
    }
    return values[SHARES - 1];
  }
}
