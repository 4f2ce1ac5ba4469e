package rondure.stars;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import rondure.base.Moments;
import rondure.base.PixelPlane;

/**
 * Painted stars with a Gaussian halo: within the radius r it holds 1 − exp(−r²/2σ²) of its light
 * (closed form).
 */
class SurroundingsMeterTest {
  private static final int WIDTH = 900;
  private static final int HEIGHT = 700;
  private static final double NOISE = 2;
  private static final double CORE_SIGMA = 0.9;
  private static final double HALO_SIGMA = 5.5;
  private static final SkyMask ALL_SKY = new SkyMask(1000, List.of("1"));

  private static final Background LEVEL =
      new Background() {
        @Override
        public float levelAt(int xPx, int yPx) {
          return 100;
        }

        @Override
        public float noiseAt(int xPx, int yPx) {
          return (float) NOISE;
        }
      };

  private final SplittableRandom random = new SplittableRandom(11);
  private final float[] values = new float[WIDTH * HEIGHT];
  private final List<Star> stars = new ArrayList<>();

  private void sky() {
    for (int i = 0; i < values.length; i++) {
      values[i] = (float) (100 + NOISE * random.nextGaussian());
    }
  }

  private void paint(double x, double y, double flux, double haloShare) {
    for (int row = (int) y - 40; row <= y + 40; row++) {
      for (int column = (int) x - 40; column <= x + 40; column++) {
        double square = (column - x) * (column - x) + (row - y) * (row - y);
        double light =
            (1 - haloShare) * gaussian(square, CORE_SIGMA)
                + haloShare * gaussian(square, HALO_SIGMA);
        if (column >= 0 && row >= 0 && column < WIDTH && row < HEIGHT) {
          values[row * WIDTH + column] += (float) (flux * light);
        }
      }
    }
  }

  private static double gaussian(double square, double sigma) {
    return Math.exp(-square / (2 * sigma * sigma)) / (2 * Math.PI * sigma * sigma);
  }

  private void star(double x, double y, double flux, double haloShare) {
    paint(x, y, flux, haloShare);
    Moments moments = Moments.round(CORE_SIGMA * CORE_SIGMA);
    stars.add(new Star(x, y, flux, 50, moments, 0.1, 0.1, 0.1, 2.1, 2.1, 0, 0, 1.1, 0.1));
  }

  /** Rows of stars, each a little fainter than the one before. */
  private void field(double haloShare) {
    sky();
    double flux = 60_000;
    for (int row = 0; row < 7; row++) {
      for (int column = 0; column < 9; column++) {
        star(60.3 + 95 * column, 50.7 + 97 * row, flux, haloShare);
        flux *= 0.93;
      }
    }
  }

  private Surroundings measured(PixelPlane plane) {
    return new SurroundingsMeter(plane, LEVEL, ALL_SKY).of(stars, List.of());
  }

  private static double ofHalo(double fromPx, double toPx) {
    double inside =
        Math.exp(-fromPx * fromPx / (2 * HALO_SIGMA * HALO_SIGMA))
            - Math.exp(-toPx * toPx / (2 * HALO_SIGMA * HALO_SIGMA));
    return inside / (Math.PI * (toPx * toPx - fromPx * fromPx));
  }

  @Test
  void ringsHoldTheLightOfAHalo() {
    field(0.3);
    for (Surroundings.Ring ring : measured(PixelPlane.full(WIDTH, HEIGHT, values)).rings()) {
      double core = ring.fromPx() < 4 ? 0.003 / 22 : 0;
      double truth = 0.3 * (ofHalo(ring.fromPx(), ring.toPx()) - ofHalo(23, 28));
      double error = 3 * ring.errorPerPx2() + 0.02 * truth + core;
      assertEquals(truth, ring.lightPerPx2(), error, ring.toString());
    }
  }

  /** Fainter stars in between, one for each 400 px², and only the green sites of a mosaic. */
  @Test
  void neighboursAreNoHalo() {
    field(0);
    for (int i = 0; i < WIDTH * HEIGHT / 400; i++) {
      paint(random.nextDouble(WIDTH), random.nextDouble(HEIGHT), 300, 0);
    }
    for (int i = 0; i < values.length; i++) {
      values[i] = (i % WIDTH + i / WIDTH) % 2 == 0 ? values[i] : Float.NaN;
    }
    Surroundings around = measured(PixelPlane.checkerboard(WIDTH, HEIGHT, values, 0));
    assertEquals(60, around.starCount());
    for (Surroundings.Ring ring : around.rings()) {
      double area = Math.PI * (ring.toPx() * ring.toPx() - ring.fromPx() * ring.fromPx());
      assertTrue(Math.abs(ring.lightPerPx2()) * area < 0.02, ring.toString());
      assertTrue(
          Math.abs(ring.lightPerPx2()) < 4 * ring.errorPerPx2() + 0.003 / 22, ring.toString());
    }
  }

  @Test
  void starsBesideOthersAreNotAsked() {
    field(0.3);
    List<Star> alone = List.copyOf(stars);
    for (Star star : alone) {
      star(star.xPx() + 12, star.yPx(), 0.8 * star.fluxCounts(), 0);
    }
    assertEquals(Surroundings.NONE, measured(PixelPlane.full(WIDTH, HEIGHT, values)));
  }
}
