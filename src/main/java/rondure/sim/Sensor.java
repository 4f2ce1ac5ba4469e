package rondure.sim;

import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * From light to counts: filters, response spread, dark current and hot pixels, photon noise, read
 * noise, gain, black level, clipping. Photon noise is exact Poisson below 60 electrons and a
 * Gaussian of the same mean and variance above.
 */
final class Sensor {
  private static final double GAUSSIAN_FROM_ELECTRONS = 60;
  private static final double HOT_ELECTRONS_PER_SECOND = 120;

  private Sensor() {}

  /**
   * The counts of one exposure, row-major.
   *
   * @param light electrons in every pixel, filters already applied
   */
  static char[] expose(CameraPlan camera, long seed, Exposure exposure, float[] light) {
    int width = camera.widthPx();
    char[] counts = new char[light.length];
    float[] hot = hotElectrons(camera, seed, exposure.openSeconds());
    double dark = camera.darkElectronsPerSecond() * exposure.openSeconds();
    double perCount = camera.electronsPerCount(exposure.iso());
    IntStream.range(0, camera.heightPx())
        .parallel()
        .forEach(
            y -> {
              SplittableRandom chance = Chance.of(seed, exposure.number(), y, 31);
              SplittableRandom fixed = Chance.of(seed, y, 32);
              for (int x = 0; x < width; x++) {
                int i = y * width + x;
                double response =
                    camera.responseSpread() == 0
                        ? 1
                        : Math.max(0, 1 + camera.responseSpread() * fixed.nextGaussian());
                double mean = light[i] * response + dark + hot[i];
                double electrons =
                    photons(mean, chance) + camera.readNoiseElectrons() * chance.nextGaussian();
                double value = Math.rint(electrons / perCount) + camera.blackLevelCounts();
                counts[i] = (char) Math.max(0, Math.min(camera.whiteLevelCounts(), value));
              }
            });
    return counts;
  }

  /** Dark electrons of the hot pixels, the same pixels in every frame of the camera. */
  private static float[] hotElectrons(CameraPlan camera, long seed, double openSeconds) {
    int size = camera.widthPx() * camera.heightPx();
    float[] hot = new float[size];
    SplittableRandom chance = Chance.of(seed, 33);
    long count = Math.round(camera.hotPixelsPerMegapixel() * size / 1e6);
    for (long i = 0; i < count; i++) {
      int place = chance.nextInt(size);
      double strength = -Math.log(1 - chance.nextDouble());
      hot[place] += (float) (HOT_ELECTRONS_PER_SECOND * strength * strength * openSeconds);
    }
    return hot;
  }

  /** A Poisson deviate: by inversion when the mean is small, else Gaussian. */
  static double photons(double mean, SplittableRandom chance) {
    if (!(mean > 0)) {
      return 0;
    }
    if (mean > GAUSSIAN_FROM_ELECTRONS) {
      return Math.max(0, mean + Math.sqrt(mean) * chance.nextGaussian());
    }
    double draw = chance.nextDouble();
    double term = Math.exp(-mean);
    double reached = term;
    int photons = 0;
    while (draw > reached && photons < 400) {
      photons++;
      term *= mean / photons;
      reached += term;
    }
    return photons;
  }
}
