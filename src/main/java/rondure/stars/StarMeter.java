package rondure.stars;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import rondure.base.Moments;
import rondure.base.PixelPlane;
import rondure.base.RobustStats;

/** Measures the stars of a frame: find, shape, average. */
public final class StarMeter {
  private static final double GAIN_FROM_PEAK_SIGMAS = 10;

  private final PixelPlane plane;
  private final double whiteLevelCounts;
  private final double frameGain;
  private final Wings wings;

  /**
   * Everything about the stars of one frame.
   *
   * @param plane linear pixels
   * @param context white level and code step of the plane
   * @param settings limits
   */
  public static StarField measure(PixelPlane plane, PixelContext context, StarSettings settings) {
    return assemble(StarFinder.find(plane, context, settings), plane, context, settings);
  }

  /**
   * Shapes and averages of the sources that were found.
   *
   * @param found background, sky and candidates of the same plane
   * @param plane linear pixels
   * @param context white level and code step of the plane
   * @param settings limits
   */
  public static StarField assemble(
      Found found, PixelPlane plane, PixelContext context, StarSettings settings) {
    StarShaper.Shaped shaped = new StarShaper(found, plane, context, settings).shape();
    StarMeter meter = new StarMeter(shaped, found, plane, context, settings);
    List<Star> stars = meter.stars(shaped.shapes());
    return new StarField(
        plane.widthPx(),
        plane.heightPx(),
        stars,
        shaped.others(),
        shaped.refused(),
        found.sky(),
        found.mask(),
        new AverageStars(plane, found.background()).of(stars),
        meter.stars(shaped.lights()),
        new SurroundingsMeter(plane, found.background(), found.mask()).of(stars, shaped.others()));
  }

  private StarMeter(
      StarShaper.Shaped shaped,
      Found found,
      PixelPlane plane,
      PixelContext context,
      StarSettings settings) {
    this.plane = plane;
    this.whiteLevelCounts = context.whiteLevelCounts();
    this.frameGain = context.developed() ? 0 : frameGain(shaped.shapes(), found.sky());
    double width =
        median(shaped.shapes(), shape -> shape.fit().profile().fwhmMinorPx(shape.fit().moments()));
    this.wings = new Wings(plane, found.background(), settings, width);
  }

  /** As stars, brightest first. */
  private List<Star> stars(List<MeasuredShape> shapes) {
    List<Star> stars = new ArrayList<>();
    for (MeasuredShape shape : shapes) {
      float peak = plane.at(shape.candidate().peakXPx(), shape.candidate().peakYPx());
      stars.add(star(shape, frameGain, wings.ratio(shape.fit()), peak / whiteLevelCounts));
    }
    stars.sort(Comparator.comparingDouble(Star::fluxCounts).reversed());
    return stars;
  }

  /**
   * Variance per count of starlight, from how the bright stars scatter about their models. 0
   * without bright stars.
   */
  private static double frameGain(List<MeasuredShape> shapes, SkyState sky) {
    List<MeasuredShape> bright =
        shapes.stream()
            .filter(
                shape ->
                    shape.candidate().peakCounts() > GAIN_FROM_PEAK_SIGMAS * shape.noiseCounts())
            .toList();
    return Gain.of(bright.stream().map(MeasuredShape::fit).toList(), sky);
  }

  private static Star star(
      MeasuredShape shape, double frameGain, double wingRatio, double peakFraction) {
    ShapeFit fit = shape.fit();
    ShapeFit.Errors errors = fit.errors();
    // what the model misses makes the shape less certain, the star no fainter
    double gain = Math.max(frameGain, fit.residual().gain());
    Moments light = fit.profile().lightMoments(fit.moments(), Profile.WINDOW_SIGMAS);
    double widening = light.majorPx2() / fit.moments().majorPx2();
    return new Star(
        fit.xPx(),
        fit.yPx(),
        fit.fluxCounts(),
        StarShaper.snrOf(fit, frameGain),
        light,
        widening * Math.sqrt(errors.xxSkyPx4() + gain * errors.xxStarPx4()),
        widening * Math.sqrt(errors.xySkyPx4() + gain * errors.xyStarPx4()),
        widening * Math.sqrt(errors.yySkyPx4() + gain * errors.yyStarPx4()),
        fit.profile().fwhmMajorPx(fit.moments()),
        fit.profile().fwhmMinorPx(fit.moments()),
        shape.tails().xPx(),
        shape.tails().yPx(),
        wingRatio,
        peakFraction);
  }

  private static <T> double median(List<T> of, ToDoubleFunction<T> part) {
    return RobustStats.median(of.stream().mapToDouble(part).toArray());
  }
}
