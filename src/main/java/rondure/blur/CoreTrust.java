package rondure.blur;

import java.util.List;
import java.util.Optional;
import rondure.base.Moments;
import rondure.base.RobustStats;

/**
 * Whether a core is the lens and sensor at their best or the same defocus in every frame.
 *
 * <p>No exact answer exists where the lens images alike over the field. Three things speak: the
 * width (a prior on the cores of lenses), the profile (defocus makes a flat top), and how well
 * either assumption fits the pattern over the field.
 */
final class CoreTrust {
  private static final double FLAT_TOP_LEAVES = 0.1;

  /** What one more free parameter gains by itself, and some caution. */
  private static final double FREEDOM = 1;

  private static final double CAUTION = 1.5;
  private static final double SURELY_NARROWER = 0.65;

  private static final double MOST_LOG_ODDS = 8;

  /** However well a pattern fits, no lens has a core of twice the usual width. */
  private static final double MOST_SEEN_ODDS = 6;

  /** Nights out of focus throughout are rare, but narrow stars alone do not rule them out. */
  private static final double MOST_WIDTH_ODDS = 2.5;

  /** Developing changes the form, so that it tells less. */
  private static final double MOST_DEVELOPED_ODDS = 4;

  private static final double MOST_FIT_ODDS = 3;

  /** Width over σ is 2.0 to 2.2 for cores with wings, 2.4 to 2.6 for those that a disc widens. */
  private static final double PROFILE_SPREAD = 0.08;

  private static final double MOST_PROFILE_ODDS = 4;

  /** A tilted or curved field has its best focus somewhere, which bounds the core. */
  private static final double TELLING_LENS_PX = 2;

  private static final double USUAL_ERROR_PX2 = 0.3;
  private static final double HELD_ERROR_PX2 = 0.1;

  /** A core no larger than what the profile leaves has its discs already: flatness says no more. */
  private static final double EXPLAINED = 1.1;

  /** Second moment of a core with wings over that of a Gaussian as wide, Moffat's β = 3.5. */
  private static final double MOST_WINGS = 1.4;

  /** Second moments of the narrowest cores, 1.4 px wide, over the usual. */
  private static final double NARROWEST = 0.4;

  /** Disc over core, second moments: equally sharp to 2.5 %, and surely softer. */
  private static final double SAME_WIDTH = 0.05;

  private static final double OTHER_WIDTH = 0.4;
  private static final int LEAST_AT_ONE_WIDTH = 3;
  private static final double EXCURSION_ODDS = Math.log(4);

  /** Second moment before developing over that after it. */
  private static final double UNDEVELOPED = 0.9;

  /** Of a Moffat profile of exponent 3, its wings cut where noise hides them. */
  private static final double LEAST_VISIBLE = 0.5;

  private final AttributionSettings settings;
  private final List<FrameEvidence> sharpest;
  private final double misfit;
  private final Optional<CoreForm> form;

  /**
   * @param sharpest frames whose width is the core's, at least one
   * @param misfit see {@link SharedMisfit}
   * @param form what average stars show, where they do
   */
  CoreTrust(
      AttributionSettings settings,
      List<FrameEvidence> sharpest,
      double misfit,
      Optional<CoreForm> form) {
    this.form = form;
    this.misfit = misfit;
    this.settings = settings;
    this.sharpest = List.copyOf(sharpest);
  }

  /** Half-maximum width of a round star of this second moment, by the sharpest frames' relation. */
  double fwhmPx(double px2) {
    return widthOverSigma() * Math.sqrt(px2);
  }

  /** 2.355 for a Gaussian, less for stars with wings, more for flat ones. */
  private double widthOverSigma() {
    double[] ratios =
        sharpest.stream()
            .map(frame -> FieldShape.of(frame.field()))
            .mapToDouble(shape -> shape.minorFwhmPx() / Math.sqrt(shape.minorPx2()))
            .toArray();
    return RobustStats.median(ratios);
  }

  /**
   * The core to expect if all frames are out of focus; empty if that is no narrower.
   *
   * <p>The disc is what widens the usual core to the stars' half-maximum width. What their second
   * moment has beyond both is wings, which are the core's.
   */
  private Optional<Double> usualPx2(double px2, double leastPx2) {
    double fwhm = fwhmPx(px2);
    double core = Math.min(settings.usualCoreFwhmPx(), Math.sqrt(SURELY_NARROWER) * fwhm);
    double left = px2 - DiscWidth.discPx2(core, fwhm);
    double bare = Math.pow(core / Moments.FWHM_PER_SIGMA, 2);
    double winged = Math.max(bare, Math.min(MOST_WINGS * bare, left));
    double usual = Math.min(SURELY_NARROWER * px2, Math.min(winged, mostPx2(px2, bare)));
    return usual > leastPx2 ? Optional.of(usual) : Optional.empty();
  }

  /**
   * What a flat profile leaves for the core; sharpening and its like make profiles of their own.
   */
  private double mostPx2(double px2, double usualPx2) {
    return developed()
        ? Math.max(NARROWEST * usualPx2, px2)
        : Math.max(NARROWEST * usualPx2, Math.min(px2, mostByProfilePx2()));
  }

  /** Second moment that a flat profile of the sharpest frames' stars leaves for the core. */
  private double mostByProfilePx2() {
    double[] whole =
        sharpest.stream().mapToDouble(frame -> FieldShape.of(frame.field()).minorPx2()).toArray();
    return (1 - DiscWidth.leastShare(widthOverSigma())) * RobustStats.median(whole);
  }

  private boolean developed() {
    return sharpest.stream().anyMatch(FrameEvidence::developed);
  }

  private boolean explained(double corePx2) {
    return corePx2 <= EXPLAINED * mostByProfilePx2();
  }

  /** What to assume if every frame is out of focus; empty where that leaves no narrower core. */
  Optional<CoreAssumption> ifDefocused(SceneSolution found, double leastPx2) {
    return form.isPresent()
        ? form.get().ifDefocused(found, settings.usualCoreFwhmPx(), leastPx2)
        : usualPx2(found.corePx2(), leastPx2)
            .map(px2 -> CoreAssumption.usual(leastPx2, px2, usualErrorPx2(found)));
  }

  /**
   * Held where only the profile tells a disc from a core: the field would let the core grow back.
   */
  private double usualErrorPx2(SceneSolution found) {
    LensSurface lens = found.lens();
    double slope = Math.hypot(lens.tiltRightPx(), lens.tiltDownPx());
    boolean fieldTells = Math.max(slope, Math.abs(lens.curvaturePx())) > TELLING_LENS_PX;
    return developed() || fieldTells || explained(found.corePx2())
        ? USUAL_ERROR_PX2
        : HELD_ERROR_PX2;
  }

  /** The reading from the fits with the core found and, where there is one, the usual core. */
  CoreReading reading(SceneSolution found, Optional<SceneSolution> defocused) {
    double px2 = found.corePx2();
    double fwhm = fwhmPx(px2);
    double limit = settings.widestCoreDevelopedPx();
    double width = form.map(f -> f.coreFwhmPx(found)).orElse(fwhm);
    double logOdds = (limit - width) / settings.coreSpreadPx();
    if (form.isPresent()) {
      logOdds = Math.min(developed() ? MOST_DEVELOPED_ODDS : MOST_WIDTH_ODDS, logOdds);
    }
    if (defocused.isPresent()) {
      SceneSolution soft = defocused.get();
      double profile = form.map(f -> f.odds(found, soft)).orElseGet(() -> wingOdds(px2));
      double seen = fit(found, soft) + flatOdds() + profile + excursionOdds(found);
      logOdds += Math.max(-MOST_SEEN_ODDS, Math.min(MOST_SEEN_ODDS, seen));
    }
    return new CoreReading(
        px2,
        fwhm,
        defocused.map(SceneSolution::corePx2).orElse(px2),
        Excess.logistic(Math.max(-MOST_LOG_ODDS, Math.min(MOST_LOG_ODDS, logOdds))),
        visibleShare(Math.max(width, fwhm), px2));
  }

  /**
   * By the wider of both readings: discs of a curved field pass for wings of the average star.
   * Developing widens cores as well, by up to a tenth or so, which is none of the causes.
   */
  private double visibleShare(double fwhmPx, double px2) {
    double share = Math.pow(fwhmPx / Moments.FWHM_PER_SIGMA, 2) / px2;
    double least = developed() ? share * UNDEVELOPED : share;
    return Math.max(LEAST_VISIBLE, Math.min(1, least));
  }

  /** Beside the stars' form, which discs far larger than the core do not blur. */
  private double fit(SceneSolution found, SceneSolution soft) {
    double odds = fitOdds(found, soft);
    return form.isPresent() ? Math.max(-MOST_FIT_ODDS, Math.min(MOST_FIT_ODDS, odds)) : odds;
  }

  /**
   * Asked of the unshaken frames from which both found the lens: shaken ones do not fit to the
   * last, and the round part of a shake is as good as a core.
   */
  private double fitOdds(SceneSolution found, SceneSolution defocused) {
    List<Integer> calm =
        found.together().stream()
            .filter(defocused.together()::contains)
            .filter(k -> found.models().get(k).whole())
            .filter(k -> !found.shake(k).proven() && !defocused.shake(k).proven())
            .toList();
    return calm.isEmpty()
        ? 0
        : (defocused.loss(calm) - found.loss(calm) + FREEDOM) / (CAUTION * misfit);
  }

  /** A flat top speaks for a disc or a ring. */
  private double flatOdds() {
    boolean flat =
        sharpest.stream()
            .allMatch(
                frame -> FlatTop.of(frame.field()).filter(f -> f >= FlatTop.FLAT_FROM).isPresent());
    return flat ? Math.log(FLAT_TOP_LEAVES) : 0;
  }

  /** Wings speak for a core; sharpening and its like change them. */
  private double wingOdds(double corePx2) {
    if (developed()) {
      return 0;
    }
    double beyond = (Moments.FWHM_PER_SIGMA - widthOverSigma()) / PROFILE_SPREAD;
    double least = explained(corePx2) ? 0 : -MOST_PROFILE_ODDS;
    return Math.max(least, Math.min(MOST_PROFILE_ODDS, beyond));
  }

  /**
   * Frames at one narrowest width beside others plainly wider: focus that comes back to one width
   * comes back to the best one, where small errors of focus do not widen.
   */
  private static double excursionOdds(SceneSolution found) {
    int narrow = 0;
    int wide = 0;
    for (int k = 0; k < found.models().size(); k++) {
      double focus = new Booking(found.models().get(k), found.shared(), found.own(k)).focusPx2();
      boolean calm = !found.shake(k).proven();
      narrow += calm && focus < SAME_WIDTH * found.corePx2() ? 1 : 0;
      wide += calm && focus > OTHER_WIDTH * found.corePx2() ? 1 : 0;
    }
    return wide > 0 && narrow >= LEAST_AT_ONE_WIDTH ? EXCURSION_ODDS : 0;
  }
}
