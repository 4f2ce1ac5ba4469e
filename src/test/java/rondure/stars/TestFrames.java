package rondure.stars;

import java.util.Random;
import java.util.function.ToDoubleFunction;
import rondure.base.Moments;
import rondure.base.PixelPlane;
import rondure.base.RobustStats;

/** Frames of many like stars at random sub-pixel places, painted, found and shaped. */
final class TestFrames {
  private TestFrames() {}

  /** Paints one star. */
  interface Painter {
    void paint(StarCanvas canvas, double x, double y, double flux);
  }

  /**
   * A square frame of stars.
   *
   * @param side stars along a side
   * @param pitchPx distance of stars
   */
  record Layout(int side, int pitchPx) {}

  static StarCanvas paint(Layout layout, double flux, long seed, Painter painter) {
    Random random = new Random(seed);
    int widthPx = layout.side() * layout.pitchPx();
    StarCanvas canvas = new StarCanvas(widthPx, widthPx);
    for (int i = 0; i < layout.side() * layout.side(); i++) {
      double x = (i % layout.side() + 0.5) * layout.pitchPx() + 2 * random.nextDouble() - 1;
      double y = (i / layout.side() + 0.5) * layout.pitchPx() + 2 * random.nextDouble() - 1;
      painter.paint(canvas, x, y, flux);
    }
    return canvas;
  }

  static StarField measure(StarCanvas canvas, StarCanvas.Exposure exposure) {
    PixelPlane plane = canvas.exposed(exposure);
    return measure(plane, exposure, 1e9);
  }

  static StarField measure(PixelPlane plane, StarCanvas.Exposure exposure, double white) {
    return StarMeter.assemble(
        RoughFinding.find(plane, exposure),
        plane,
        new PixelContext(white, 0, false),
        StarSettings.defaults());
  }

  /** Flux of a star with matched-filter signal-to-noise ν = F / (√(4π) n √(σ_major σ_minor)). */
  static double fluxForSnr(double snr, double noise, Moments moments) {
    double area = Math.sqrt(moments.majorPx2() * moments.minorPx2());
    return snr * noise * Math.sqrt(4 * Math.PI * area);
  }

  static double median(StarField field, ToDoubleFunction<Star> part) {
    return RobustStats.median(field.stars().stream().mapToDouble(part).toArray());
  }

  /** Median of each component over the stars. */
  static Moments medianMoments(StarField field) {
    return new Moments(
        median(field, star -> star.moments().xxPx2()),
        median(field, star -> star.moments().xyPx2()),
        median(field, star -> star.moments().yyPx2()));
  }

  /** Mean over the stars of each component. */
  static Moments meanMoments(StarField field) {
    Moments sum = new Moments(0, 0, 0);
    for (Star star : field.stars()) {
      sum = sum.plus(star.moments());
    }
    return sum.times(1.0 / field.stars().size());
  }

  /** Length of the line in a tensor, √(12 (M_major − M_minor)). */
  static double lengthPx(Moments moments) {
    return Math.sqrt(24 * moments.spin2Px2());
  }
}
