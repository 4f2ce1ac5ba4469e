package rondure.report;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import rondure.base.RobustStats;
import rondure.blur.Budget;
import rondure.blur.Terms;
import rondure.intake.Fact;
import rondure.intake.ShotFacts;
import rondure.night.FrameShape;
import rondure.night.NightBook;
import rondure.night.NightFrame;
import rondure.night.Scene;
import rondure.sky.Camera;
import rondure.sky.PlateScale;

/** What advice for a scene is worked out from: medians over its measured frames. */
record SceneFigures(Scene scene, List<NightFrame> frames) {

  static SceneFigures of(NightBook book, Scene scene) {
    return new SceneFigures(scene, Ranking.bestFirst(book, scene));
  }

  /**
   * FWHM of a star without what sky, tripod, focus and haze add: its width times √((core + lens) /
   * all). Where there is no budget that of the sharpest tenth; never more than that.
   */
  Optional<Double> ownWidthPx() {
    double[] widths =
        frames.stream()
            .filter(frame -> frame.budget().isPresent())
            .mapToDouble(SceneFigures::ownWidthPx)
            .toArray();
    Optional<Double> sharpest = scene.sharpestFwhmPx();
    return widths.length == 0
        ? sharpest
        : Optional.of(Math.min(RobustStats.median(widths), sharpest.orElse(Double.MAX_VALUE)));
  }

  /** Whether the own width is without what sky, tripod, focus and haze add. */
  boolean hasBudget() {
    return frames.stream().anyMatch(frame -> frame.budget().isPresent());
  }

  private static double ownWidthPx(NightFrame frame) {
    Terms terms = frame.budget().map(Budget::sky).orElseThrow();
    double own = terms.corePx2() + Math.max(0, terms.lensPx2());
    return frame.shape().map(FrameShape::fwhmPx).orElseThrow()
        * Math.sqrt(Math.min(1, own / (terms.corePx2() + terms.excessPx2())));
  }

  /** A fact's median, of two the lower, so that a frame holds it; empty where none does. */
  Optional<Double> usual(Function<ShotFacts, Optional<Fact<Double>>> fact) {
    double[] values =
        frames.stream()
            .flatMap(frame -> fact.apply(frame.facts()).stream())
            .mapToDouble(Fact::value)
            .filter(value -> value > 0)
            .toArray();
    return values.length == 0
        ? Optional.empty()
        : Optional.of(Arrays.stream(values).sorted().toArray()[(values.length - 1) / 2]);
  }

  /** Of the scene's camera, else by the facts. */
  Optional<Double> focalLengthPx() {
    Optional<Camera> camera = scene.solution().camera();
    return camera.isPresent()
        ? camera.map(Camera::focalLengthPx)
        : frames.stream()
            .flatMap(
                frame ->
                    frame.measurement().stream()
                        .map(m -> m.field())
                        .flatMap(
                            field ->
                                PlateScale.focalLengthPx(
                                    frame.facts(), field.widthPx(), field.heightPx())
                                    .stream()))
            .findFirst();
  }

  /** Longer side of its pictures. */
  Optional<Integer> longSidePx() {
    return frames.stream()
        .flatMap(frame -> frame.measurement().stream())
        .map(measured -> Math.max(measured.field().widthPx(), measured.field().heightPx()))
        .findFirst();
  }

  /** Median share of a part in all that widens the stars; empty where there is no budget. */
  Optional<Double> share(Function<Budget, Terms> where, ToDoubleFunction<Terms> part) {
    double[] shares =
        frames.stream()
            .flatMap(frame -> frame.budget().stream())
            .map(where)
            .mapToDouble(
                terms ->
                    Math.max(0, part.applyAsDouble(terms)) / (terms.corePx2() + terms.excessPx2()))
            .toArray();
    return shares.length == 0 ? Optional.empty() : Optional.of(RobustStats.median(shares));
  }
}
