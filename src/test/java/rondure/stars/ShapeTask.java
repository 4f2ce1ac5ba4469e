package rondure.stars;

import java.util.Random;
import rondure.base.PixelPlane;

/** A painted frame with its sources found, ready to be shaped: for the benchmark. */
public final class ShapeTask {
  private final PixelPlane plane;
  private final Found found;

  /** What the stars look like. */
  public enum Look {
    ROUND,
    ROUND_GREEN,
    SHARP,
    TRAIL_6,
    TRAIL_30,
    DISC_8,
    MOFFAT
  }

  private ShapeTask(PixelPlane plane, Found found) {
    this.plane = plane;
    this.found = found;
  }

  /** A frame of {@code side} × {@code side} stars of all brightnesses. */
  public static ShapeTask of(Look look, int side) {
    int pitch = look == Look.TRAIL_30 ? 80 : 48;
    Random random = new Random(3);
    StarCanvas canvas = new StarCanvas(side * pitch, side * pitch);
    for (int i = 0; i < side * side; i++) {
      double x = (i % side + 0.5) * pitch + random.nextDouble() - 0.5;
      double y = (i / side + 0.5) * pitch + random.nextDouble() - 0.5;
      paint(look, canvas, x, y, 4000 * Math.pow(random.nextDouble() + 0.03, -1));
    }
    StarCanvas.Exposure exposure = new StarCanvas.Exposure(200, 10, 0.5, -1, 9);
    exposure = look == Look.ROUND_GREEN ? exposure.greenOnly() : exposure;
    PixelPlane plane = canvas.exposed(exposure);
    return new ShapeTask(plane, RoughFinding.find(plane, exposure));
  }

  private static void paint(Look look, StarCanvas canvas, double x, double y, double flux) {
    switch (look) {
      case ROUND, ROUND_GREEN -> canvas.gaussianStar(x, y, flux, 1.1, StarCanvas.point());
      case SHARP -> canvas.gaussianStar(x, y, flux, 0.5, StarCanvas.point());
      case TRAIL_6 -> canvas.gaussianStar(x, y, flux, 1.1, StarCanvas.line(6, 0.6));
      case TRAIL_30 -> canvas.gaussianStar(x, y, 3 * flux, 1.1, StarCanvas.line(30, 0.6));
      case DISC_8 -> canvas.gaussianStar(x, y, 2 * flux, 0.9, StarCanvas.disc(8, 0));
      case MOFFAT -> canvas.moffatStar(x, y, flux, 2.6, 3, StarCanvas.point());
    }
  }

  /** Shapes and averages. */
  public StarField run() {
    return StarMeter.assemble(
        found, plane, new PixelContext(1e9, 0, false), StarSettings.defaults());
  }
}
