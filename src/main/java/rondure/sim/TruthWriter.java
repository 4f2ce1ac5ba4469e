package rondure.sim;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import rondure.base.RobustStats;

/** Sums up what was painted into one frame's truth. */
final class TruthWriter {
  private static final double PIXEL_PX2 = 1.0 / 12;

  private final NightPlan plan;
  private final Exposure exposure;
  private final double focusPx2;
  private final double corePx2;
  private final double haloPx2;

  TruthWriter(
      NightPlan plan,
      Exposure exposure,
      double focusPx2,
      List<StarCore.Part> core,
      double haloPx2) {
    this.plan = plan;
    this.exposure = exposure;
    this.focusPx2 = focusPx2;
    this.corePx2 = StarCore.variancePx2(core) - haloPx2 + PIXEL_PX2;
    this.haloPx2 = haloPx2;
  }

  FrameTruth frame(
      List<PaintedStar> stars,
      List<PaintedStar> lights,
      double[] starLight,
      ToDoubleFunction<PaintedStar> noise,
      double[] skyAtMid,
      double fromSnr) {
    CauseShares sky = shares(stars);
    CauseShares edge = shares(outerFifth(stars));
    double clear = starLight.length == 0 ? 1 : RobustStats.median(starLight);
    double green = plan.camera().throughput().green();
    double wholeCorePx2 = corePx2 + haloPx2;
    List<StarTruth> listed =
        stars.stream()
            .map(s -> s.truth(s.electrons() * green, wholeCorePx2, noise.applyAsDouble(s)))
            .filter(s -> s.snr() >= fromSnr)
            .toList();
    List<StarTruth> lamps =
        lights.stream()
            .map(s -> s.truth(s.electrons() * green, wholeCorePx2, noise.applyAsDouble(s)))
            .toList();
    return new FrameTruth(
        "",
        exposure.number(),
        exposure.startSeconds(),
        exposure.nominalSeconds(),
        exposure.openSeconds(),
        exposure.focusMicrons(),
        TrueCause.of(sky, edge, clear),
        events(),
        clear,
        sky,
        edge,
        skyAtMid[2],
        skyAtMid[5],
        skyAtMid[8],
        listed,
        lamps);
  }

  /** Median over stars of each cause's mean second moment; with no stars, core and focus only. */
  private CauseShares shares(List<PaintedStar> stars) {
    return new CauseShares(
        corePx2,
        focusPx2,
        median(stars, s -> s.trailing().meanPx2()),
        median(stars, s -> s.tripod().meanPx2()),
        median(stars, s -> s.rays().meanPx2() - focusPx2),
        haloPx2);
  }

  private static double median(List<PaintedStar> stars, ToDoubleFunction<PaintedStar> value) {
    return stars.isEmpty() ? 0 : RobustStats.median(stars.stream().mapToDouble(value).toArray());
  }

  private List<PaintedStar> outerFifth(List<PaintedStar> stars) {
    return stars.stream()
        .sorted(Comparator.comparingDouble(this::radiusPx))
        .skip(Math.round(stars.size() * 0.8))
        .toList();
  }

  private double radiusPx(PaintedStar star) {
    return Math.hypot(star.xPx() - plan.camera().centreX(), star.yPx() - plan.camera().centreY());
  }

  private List<String> events() {
    return plan.events().stream()
        .filter(e -> exposure.number() >= e.firstFrame() && exposure.number() <= e.lastFrame())
        .map(e -> e.getClass().getSimpleName())
        .map(name -> name.substring(0, 1).toLowerCase(Locale.ROOT) + name.substring(1))
        .distinct()
        .toList();
  }
}
