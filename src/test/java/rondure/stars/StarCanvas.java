package rondure.stars;

import java.util.Random;
import org.hipparchus.special.Erf;
import rondure.base.PixelPlane;

/**
 * A slow, obvious renderer for tests: stars are sums of many point images, each integrated over
 * every pixel. Shares no code with the measurement.
 */
final class StarCanvas {
  final int widthPx;
  final int heightPx;
  private final double[] light;

  StarCanvas(int widthPx, int heightPx) {
    this.widthPx = widthPx;
    this.heightPx = heightPx;
    this.light = new double[widthPx * heightPx];
  }

  /** How the light of a star is spread before the pixels take it up. */
  interface Kernel {
    /** Calls {@code spot} for points with weights that sum to 1. */
    void spots(Spot spot);
  }

  interface Spot {
    void at(double dx, double dy, double weight);
  }

  static Kernel point() {
    return spot -> spot.at(0, 0, 1);
  }

  /** Uniform light along a straight line. */
  static Kernel line(double lengthPx, double angleRad) {
    int count = 12 + (int) (4 * lengthPx);
    return spot -> {
      for (int i = 0; i < count; i++) {
        double along = lengthPx * ((i + 0.5) / count - 0.5);
        spot.at(along * Math.cos(angleRad), along * Math.sin(angleRad), 1.0 / count);
      }
    };
  }

  /** A Gaussian spread along one direction: turns round cores into elliptical ones. */
  static Kernel stretch(double sigmaPx, double angleRad) {
    int half = 24;
    double sum = 0;
    for (int i = -half; i <= half; i++) {
      sum += Math.exp(-i * i / 32.0);
    }
    double total = sum;
    return spot -> {
      for (int i = -half; i <= half; i++) {
        double along = sigmaPx * i / 4.0;
        double weight = Math.exp(-i * i / 32.0) / total;
        spot.at(along * Math.cos(angleRad), along * Math.sin(angleRad), weight);
      }
    };
  }

  /** A uniform disc, or a ring when {@code hole} (inner over outer diameter) is not 0. */
  static Kernel disc(double diameterPx, double hole) {
    int rings = 4 + (int) diameterPx;
    int count = 12 + (int) (5 * diameterPx);
    return spot -> {
      for (int ring = 0; ring < rings; ring++) {
        double area = hole * hole + (1 - hole * hole) * (ring + 0.5) / rings;
        double radius = diameterPx / 2 * Math.sqrt(area);
        for (int i = 0; i < count; i++) {
          double angle = 2 * Math.PI * (i + ring * 0.618) / count;
          spot.at(radius * Math.cos(angle), radius * Math.sin(angle), 1.0 / rings / count);
        }
      }
    };
  }

  /** Convolution of two kernels. */
  static Kernel both(Kernel first, Kernel second) {
    return spot ->
        first.spots(
            (dx, dy, weight) ->
                second.spots((dx2, dy2, w2) -> spot.at(dx + dx2, dy + dy2, weight * w2)));
  }

  /** A star with a round Gaussian core of {@code sigmaPx} before the pixel box. */
  StarCanvas gaussianStar(double x, double y, double flux, double sigmaPx, Kernel kernel) {
    kernel.spots((dx, dy, weight) -> gaussianSpot(x + dx, y + dy, flux * weight, sigmaPx));
    return this;
  }

  private void gaussianSpot(double x, double y, double flux, double sigma) {
    int reach = (int) Math.ceil(7 * sigma + 2);
    int left = Math.max(0, (int) Math.round(x) - reach);
    int right = Math.min(widthPx - 1, (int) Math.round(x) + reach);
    int top = Math.max(0, (int) Math.round(y) - reach);
    int bottom = Math.min(heightPx - 1, (int) Math.round(y) + reach);
    if (right < left || bottom < top) {
      return;
    }
    double[] columns = new double[right - left + 1];
    for (int i = left; i <= right; i++) {
      columns[i - left] = share(i - x, sigma);
    }
    for (int j = top; j <= bottom; j++) {
      double row = flux * share(j - y, sigma);
      for (int i = left; i <= right; i++) {
        light[j * widthPx + i] += row * columns[i - left];
      }
    }
  }

  /** Share of a unit Gaussian inside the pixel whose centre is {@code offset} away. */
  private static double share(double offset, double sigma) {
    double scale = sigma * Math.sqrt(2);
    return 0.5 * (Erf.erf((offset + 0.5) / scale) - Erf.erf((offset - 0.5) / scale));
  }

  /** A star with a Moffat core, integrated over each pixel on a 7 x 7 grid. */
  StarCanvas moffatStar(
      double x, double y, double flux, double fwhmPx, double beta, Kernel kernel) {
    double alpha = fwhmPx / (2 * Math.sqrt(Math.pow(2, 1 / beta) - 1));
    double peak = flux * (beta - 1) / (Math.PI * alpha * alpha);
    int reach = (int) Math.ceil(15 * fwhmPx);
    kernel.spots(
        (dx, dy, weight) -> {
          double centreX = x + dx;
          double centreY = y + dy;
          for (int j = Math.max(0, (int) y - reach); j <= Math.min(heightPx - 1, y + reach); j++) {
            for (int i = Math.max(0, (int) x - reach); i <= Math.min(widthPx - 1, x + reach); i++) {
              double far = Math.hypot(i - centreX, j - centreY);
              int grid = far < 2 * fwhmPx + 1 ? 7 : 1;
              light[j * widthPx + i] +=
                  weight * peak * moffatPixel(i - centreX, j - centreY, alpha, beta, grid);
            }
          }
        });
    return this;
  }

  private static double moffatPixel(double dx, double dy, double alpha, double beta, int grid) {
    double sum = 0;
    for (int i = 0; i < grid; i++) {
      for (int j = 0; j < grid; j++) {
        double atX = dx + (i + 0.5) / grid - 0.5;
        double atY = dy + (j + 0.5) / grid - 0.5;
        sum += Math.pow(1 + (atX * atX + atY * atY) / (alpha * alpha), -beta);
      }
    }
    return sum / (grid * grid);
  }

  /** All the light of a star in a single pixel. */
  StarCanvas hotPixel(int x, int y, double counts) {
    light[y * widthPx + x] += counts;
    return this;
  }

  /** Light without noise at one pixel. */
  double lightAt(int x, int y) {
    return light[y * widthPx + x];
  }

  /** The picture with Gaussian sky noise and photon noise of {@code gain} counts per photon. */
  PixelPlane exposed(Exposure exposure) {
    Random random = new Random(exposure.seed());
    float[] samples = new float[light.length];
    for (int i = 0; i < light.length; i++) {
      double spread =
          Math.sqrt(exposure.noise() * exposure.noise() + exposure.gain() * Math.max(0, light[i]));
      samples[i] = (float) (exposure.sky() + light[i] + spread * random.nextGaussian());
      boolean valid = exposure.parity() < 0 || (i % widthPx + i / widthPx) % 2 == exposure.parity();
      samples[i] = valid ? samples[i] : Float.NaN;
    }
    return exposure.parity() < 0
        ? PixelPlane.full(widthPx, heightPx, samples)
        : PixelPlane.checkerboard(widthPx, heightPx, samples, exposure.parity());
  }

  /**
   * How the picture is taken.
   *
   * @param sky level, counts
   * @param noise pixel noise, counts
   * @param gain variance per count of starlight
   * @param parity −1 for every pixel, else that of a checkerboard
   * @param seed of the noise
   */
  record Exposure(double sky, double noise, double gain, int parity, long seed) {
    static Exposure clean() {
      return new Exposure(100, 0, 0, -1, 1);
    }

    static Exposure noisy(double noise, long seed) {
      return new Exposure(100, noise, 0, -1, seed);
    }

    Exposure greenOnly() {
      return new Exposure(sky, noise, gain, 1, seed);
    }
  }

  /** A background that is flat at the level of the exposure. */
  static Background flat(Exposure exposure) {
    return new Background() {
      @Override
      public float levelAt(int xPx, int yPx) {
        return (float) exposure.sky();
      }

      @Override
      public float noiseAt(int xPx, int yPx) {
        return (float) Math.max(1e-3, exposure.noise());
      }
    };
  }
}
