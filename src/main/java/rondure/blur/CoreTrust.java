package rondure.blur;

import java.util.List;
import java.util.Optional;
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

  private final AttributionSettings settings;
  private final List<FrameEvidence> sharpest;
  private final double misfit;

  /**
   * @param sharpest frames whose width is the core's, at least one
   * @param misfit see {@link SharedMisfit}
   */
  CoreTrust(AttributionSettings settings, List<FrameEvidence> sharpest, double misfit) {
    this.misfit = misfit;
    this.settings = settings;
    this.sharpest = List.copyOf(sharpest);
  }

  /** Half-maximum width of a round star of this second moment, by the sharpest frames' relation. */
  double fwhmPx(double px2) {
    double[] ratios =
        sharpest.stream()
            .map(frame -> FieldShape.of(frame.field()))
            .mapToDouble(shape -> shape.minorFwhmPx() / Math.sqrt(shape.minorPx2()))
            .toArray();
    return RobustStats.median(ratios) * Math.sqrt(px2);
  }

  /** The core to expect if all frames are out of focus; empty if that is no narrower. */
  Optional<Double> usualPx2(double px2, double leastPx2) {
    double narrower = settings.usualCoreFwhmPx() / fwhmPx(px2);
    double usual = px2 * Math.min(SURELY_NARROWER, narrower * narrower);
    return usual > leastPx2 ? Optional.of(usual) : Optional.empty();
  }

  /** The reading from the fits with the core found and, where there is one, the usual core. */
  CoreReading reading(SceneSolution found, Optional<SceneSolution> defocused) {
    double px2 = found.corePx2();
    double fwhm = fwhmPx(px2);
    boolean developed = sharpest.get(0).developed();
    double limit = developed ? settings.widestCoreDevelopedPx() : settings.widestCoreSensorPx();
    double logOdds = (limit - fwhm) / settings.coreSpreadPx();
    if (defocused.isPresent()) {
      logOdds += fitOdds(found, defocused.get()) + flatOdds();
    }
    return new CoreReading(
        px2,
        fwhm,
        defocused.map(SceneSolution::corePx2).orElse(px2),
        Excess.logistic(Math.max(-MOST_LOG_ODDS, Math.min(MOST_LOG_ODDS, logOdds))));
  }

  private double fitOdds(SceneSolution found, SceneSolution defocused) {
    return (defocused.loss() - found.loss() + FREEDOM) / (CAUTION * misfit);
  }

  private double flatOdds() {
    boolean flat =
        sharpest.stream()
            .allMatch(
                frame -> FlatTop.of(frame.field()).filter(f -> f >= FlatTop.FLAT_FROM).isPresent());
    return flat ? Math.log(FLAT_TOP_LEAVES) : 0;
  }
}
