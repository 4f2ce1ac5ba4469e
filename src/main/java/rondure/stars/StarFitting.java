package rondure.stars;

import java.util.List;
import java.util.Optional;
import rondure.base.Moments;
import rondure.base.PixelPlane;

/** Window and fit of single stars, in step: the window follows what the fit finds. */
final class StarFitting {
  private static final int WINDOWS_MAX = 4;
  private static final int STEPS_MAX = 40;

  /** Enough to see whether another profile is worth while. */
  private static final int TRIAL_STEPS = 8;

  private static final int LEAST_PIXELS = 12;
  private static final double NEIGHBOUR_SIGMAS = 9;
  private static final double NEIGHBOUR_LEAST_FLUX = 0.005;
  private static final int OUTLIERS_MAX = 3;
  private static final double OUTLIER_SIGMAS = 6;

  private final PixelPlane plane;
  private final Background background;
  private final Neighbours neighbours;
  private final FitPixels pixels = new FitPixels();
  private final ShapeFitter fitter = new ShapeFitter();

  StarFitting(PixelPlane plane, Background background, Neighbours neighbours) {
    this.plane = plane;
    this.background = background;
    this.neighbours = neighbours;
  }

  /** A fit, or why there is none. */
  record Attempt(Optional<ShapeFit> fit, Refusal whyNot) {}

  /** The pixels of the latest star. */
  FitPixels pixels() {
    return pixels;
  }

  boolean cut(FitPixels into, Candidate self, Placed star) {
    List<Placed> near = neighbours.near(self, star, NEIGHBOUR_SIGMAS, NEIGHBOUR_LEAST_FLUX);
    return into.cut(plane, background, star, near);
  }

  /** A short fit, to compare profiles; it need not be settled. */
  ShapeFit tryOut(FitPixels from, PixelNoise noise, int profileIndex, Placed start) {
    Profile profile = ShapeFamilies.profile(profileIndex, start.moments());
    return fitter.fit(from, noise, profile, start, TRIAL_STEPS);
  }

  private ShapeFit fit(PixelNoise noise, int profileIndex, Placed start) {
    Profile profile = ShapeFamilies.profile(profileIndex, start.moments());
    return fitter.fit(pixels, noise, profile, start, STEPS_MAX);
  }

  /** Fits with a window that suits the star: repeated until window and fit agree within 20 %. */
  Attempt settle(Candidate self, Placed start, PixelNoise noise, int profileIndex) {
    Placed window = start;
    ShapeFit fit = null;
    for (int i = 0; i < WINDOWS_MAX; i++) {
      if (!cut(pixels, self, window)) {
        return new Attempt(Optional.empty(), Refusal.EDGE);
      }
      if (pixels.count() < LEAST_PIXELS) {
        return new Attempt(Optional.empty(), Refusal.CROWDED);
      }
      fit = fit(noise, profileIndex, window);
      if (!fit.settled() || agree(fit.moments(), window.moments())) {
        break;
      }
      window = ProfileChoice.startOf(fit);
    }
    return new Attempt(Optional.of(withoutOutliers(fit, noise, profileIndex)), Refusal.NOT_SETTLED);
  }

  private static boolean agree(Moments fitted, Moments window) {
    return within(fitted.minorPx2(), window.minorPx2())
        && within(fitted.majorPx2(), window.majorPx2());
  }

  private static boolean within(double fitted, double assumed) {
    return fitted < 1.44 * assumed + 0.1 && fitted > assumed / 1.44 - 0.1;
  }

  /** Takes out the few pixels that no star could make, such as hot ones beside it. */
  private ShapeFit withoutOutliers(ShapeFit fit, PixelNoise noise, int profileIndex) {
    double[] model = new double[pixels.count() * Profile.STRIDE];
    fit.profile().evaluate(pixels, fit.xPx(), fit.yPx(), fit.moments(), model);
    int dropped = 0;
    for (int i = pixels.count() - 1; i >= 0 && dropped < OUTLIERS_MAX; i--) {
      double light = fit.fluxCounts() * model[i * Profile.STRIDE];
      double gap = pixels.value(i) - light - fit.offsetCounts();
      double spread =
          Math.sqrt(
              noise.skyCounts() * noise.skyCounts()
                  + Math.max(0, fit.residual().gain()) * light
                  + 0.02 * light * light);
      if (Math.abs(gap) > OUTLIER_SIGMAS * spread && light < 0.2 * pixels.peak()) {
        pixels.drop(i);
        dropped++;
      }
    }
    return dropped == 0 ? fit : fit(noise, profileIndex, ProfileChoice.startOf(fit));
  }

  /** Lets a bright star choose its own profile, and its window once more. */
  ProfileChoice.Chosen climb(Candidate self, ProfileChoice.Chosen start, PixelNoise noise) {
    ProfileChoice.Chosen chosen =
        ProfileChoice.climb((index, from) -> tryOut(pixels, noise, index, from), start);
    if (chosen.profileIndex() == start.profileIndex()) {
      return start;
    }
    Attempt attempt =
        settle(self, ProfileChoice.startOf(chosen.fit()), noise, chosen.profileIndex());
    return attempt
        .fit()
        .filter(ShapeFit::settled)
        .map(fit -> new ProfileChoice.Chosen(chosen.profileIndex(), fit))
        .orElse(start);
  }
}
