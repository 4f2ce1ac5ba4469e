package rondure.report;

import java.util.Comparator;
import java.util.Optional;
import java.util.function.ToLongFunction;
import rondure.blur.Terms;
import rondure.intake.Fact;
import rondure.night.NightFrame;
import rondure.stars.AverageStar;

/**
 * The frame that shows a lens best: of those at the widest aperture that show stars in most parts
 * of the frame (centre, midway, edge) the one to which sky, tripod, focus and haze added least;
 * without budgets the one with the narrowest stars.
 *
 * @param frame the frame
 * @param addedPx2 what they added, where a budget tells
 */
record LensSample(NightFrame frame, Optional<Double> addedPx2) {

  /** Of a set-up. */
  static LensSample of(LensSetup setup) {
    Optional<Double> widest = setup.widestFNumber();
    boolean budgets = setup.frames().stream().anyMatch(frame -> frame.budget().isPresent());
    ToLongFunction<NightFrame> zones = frame -> -zones(frame);
    return setup.frames().stream()
        .filter(
            frame -> widest.isEmpty() || frame.facts().fNumber().map(Fact::value).equals(widest))
        .filter(frame -> !budgets || frame.budget().isPresent())
        .min(
            Comparator.comparingLong(zones)
                .thenComparingDouble(frame -> budgets ? added(frame) : width(frame))
                .thenComparing(NightFrame::file))
        .map(LensSample::of)
        .orElseGet(() -> of(setup.frames().get(0)));
  }

  private static LensSample of(NightFrame frame) {
    return new LensSample(
        frame, frame.budget().isPresent() ? Optional.of(added(frame)) : Optional.empty());
  }

  private static long zones(NightFrame frame) {
    return frame.measurement().orElseThrow().field().averageStars().stream()
        .filter(average -> average.zone() != AverageStar.Zone.WHOLE)
        .count();
  }

  private static double width(NightFrame frame) {
    return frame.shape().map(Ranking::longAxisPx).orElse(Double.MAX_VALUE);
  }

  private static double added(NightFrame frame) {
    Terms terms = frame.budget().orElseThrow().sky();
    return Math.max(0, terms.focusPx2())
        + Math.max(0, terms.trailingPx2())
        + Math.max(0, terms.tripodPx2())
        + Math.max(0, terms.hazePx2());
  }
}
