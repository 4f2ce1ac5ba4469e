package rondure.stars;

import java.util.SplittableRandom;
import org.hipparchus.special.Erf;
import rondure.base.PixelPlane;

/**
 * Paints small test skies: stars as Gaussians integrated over pixels, lines, discs and rings built
 * from many of them, on a sky with Gaussian or photon-like noise. Seeded, independent of the code
 * it tests.
 */
public final class SkyPainter {
  private final int width;
  private final int height;
  private final double[] light;
  private final SplittableRandom random;

  public SkyPainter(int width, int height, long seed) {
    this.width = width;
    this.height = height;
    this.light = new double[width * height];
    this.random = new SplittableRandom(seed);
  }

  /** Adds a level everywhere. */
  public SkyPainter level(double counts) {
    for (int i = 0; i < light.length; i++) {
      light[i] += counts;
    }
    return this;
  }

  /** A function of position added to the light. */
  public SkyPainter add(Surface surface) {
    for (int i = 0; i < light.length; i++) {
      light[i] += surface.at(i % width, i / width);
    }
    return this;
  }

  /** A function of position that replaces the light where it is not NaN. */
  public SkyPainter replace(Surface surface) {
    for (int i = 0; i < light.length; i++) {
      double value = surface.at(i % width, i / width);
      light[i] = Double.isNaN(value) ? light[i] : value;
    }
    return this;
  }

  /** Light by position. */
  public interface Surface {
    double at(int x, int y);
  }

  /** A Gaussian star, exactly integrated over the pixels. */
  public SkyPainter star(double x, double y, double flux, double sigma) {
    int reach = (int) Math.ceil(6 * sigma + 1);
    int x0 = (int) Math.max(0, Math.rint(x) - reach);
    int x1 = (int) Math.min(width - 1, Math.rint(x) + reach);
    int y0 = (int) Math.max(0, Math.rint(y) - reach);
    int y1 = (int) Math.min(height - 1, Math.rint(y) + reach);
    double[] across = new double[Math.max(0, x1 - x0 + 1)];
    for (int i = 0; i < across.length; i++) {
      across[i] = box(x0 + i - x, sigma);
    }
    for (int j = y0; j <= y1; j++) {
      double down = flux * box(j - y, sigma);
      for (int i = 0; i < across.length; i++) {
        light[j * width + x0 + i] += down * across[i];
      }
    }
    return this;
  }

  private static double box(double offset, double sigma) {
    double scale = sigma * Math.sqrt(2);
    return (Erf.erf((offset + 0.5) / scale) - Erf.erf((offset - 0.5) / scale)) / 2;
  }

  /** A line of light of even brightness, blurred by a Gaussian. */
  public SkyPainter trail(
      double x, double y, double flux, double length, double angleRad, double sigma) {
    int steps = (int) Math.max(1, Math.ceil(1.5 * length / sigma));
    for (int i = 0; i < steps; i++) {
      double along = length * ((i + 0.5) / steps - 0.5);
      star(x + along * Math.cos(angleRad), y + along * Math.sin(angleRad), flux / steps, sigma);
    }
    return this;
  }

  /** A disc of even brightness with a hole, blurred by a Gaussian; hole 0 makes a full disc. */
  public SkyPainter ring(
      double x, double y, double flux, double diameter, double holeShare, double sigma) {
    double radius = diameter / 2;
    double step = 0.8 * sigma;
    int reach = (int) Math.ceil(radius / step);
    int count = 0;
    for (int pass = 0; pass < 2; pass++) {
      for (int j = -reach; j <= reach; j++) {
        for (int i = -reach; i <= reach; i++) {
          double r = Math.hypot(i, j) * step;
          if (r <= radius && r >= holeShare * radius) {
            if (pass == 0) {
              count++;
            } else {
              star(x + i * step, y + j * step, flux / count, sigma);
            }
          }
        }
      }
    }
    return this;
  }

  /** Light in one photosite. */
  public SkyPainter hotPixel(int x, int y, double counts) {
    light[y * width + x] += counts;
    return this;
  }

  /** The picture with Gaussian noise: variance = read² + light / gain, as photons and electrons. */
  public float[] exposed(double readNoise, double countsPerElectron) {
    float[] out = new float[light.length];
    for (int i = 0; i < out.length; i++) {
      double photons = Math.max(0, light[i]) * countsPerElectron;
      out[i] = (float) (light[i] + gaussian() * Math.sqrt(readNoise * readNoise + photons));
    }
    return out;
  }

  /** As {@link #exposed} with even noise, on every pixel. */
  public PixelPlane full(double noise) {
    return PixelPlane.full(width, height, exposed(noise, 0));
  }

  /** As {@link #exposed} with even noise, greens of a Bayer pattern only. */
  public PixelPlane checkerboard(double noise, int parity) {
    return PixelPlane.checkerboard(width, height, greens(exposed(noise, 0), width, parity), parity);
  }

  /** Sets all but the greens of a Bayer pattern to NaN. */
  public static float[] greens(float[] samples, int width, int parity) {
    for (int i = 0; i < samples.length; i++) {
      if ((i % width + i / width) % 2 != parity) {
        samples[i] = Float.NaN;
      }
    }
    return samples;
  }

  /** A uniform number in [from, to). */
  public double uniform(double from, double to) {
    return from + (to - from) * random.nextDouble();
  }

  private double gaussian() {
    double u = 1 - random.nextDouble();
    return Math.sqrt(-2 * Math.log(u)) * Math.cos(2 * Math.PI * random.nextDouble());
  }
}
