package rondure.sim;

import java.util.stream.IntStream;

/**
 * From raw counts to a picture: black taken off, colours filled in between photosites (bilinear)
 * and balanced, and for 8 bits the sRGB curve (IEC 61966-2-1) and unsharp masking.
 */
final class Develop {
  private Develop() {}

  /** 1 for a mono camera, 3 for a Bayer camera. */
  static int channels(CameraPlan camera) {
    return camera.mosaic().isBayer() ? 3 : 1;
  }

  /** Linear light over the white level, one plane for each channel; below black is 0. */
  static float[][] linear(SimFrame frame) {
    CameraPlan camera = frame.plan().camera();
    int width = camera.widthPx();
    int height = camera.heightPx();
    float[][] planes = new float[channels(camera)][width * height];
    double range = camera.whiteLevelCounts() - camera.blackLevelCounts();
    IntStream.range(0, height)
        .parallel()
        .forEach(
            y -> {
              for (int x = 0; x < width; x++) {
                for (int channel = 0; channel < planes.length; channel++) {
                  double counts =
                      planes.length == 1
                          ? frame.at(x, y)
                          : between(frame, camera.mosaic(), x, y, channel);
                  double light = (counts - camera.blackLevelCounts()) / range;
                  double balance =
                      planes.length == 1
                          ? 1
                          : camera.throughput().green() / camera.throughput().of(channel);
                  planes[channel][y * width + x] =
                      (float) Math.max(0, Math.min(1, light * balance));
                }
              }
            });
    return planes;
  }

  /** Mean of the photosites of a channel within one px (the photosite itself where it fits). */
  private static double between(SimFrame frame, Mosaic mosaic, int x, int y, int channel) {
    if (mosaic.channelAt(x, y) == channel) {
      return frame.at(x, y);
    }
    double sum = 0;
    int count = 0;
    for (int row = Math.max(0, y - 1); row <= Math.min(frame.heightPx() - 1, y + 1); row++) {
      for (int column = Math.max(0, x - 1);
          column <= Math.min(frame.widthPx() - 1, x + 1);
          column++) {
        if (mosaic.channelAt(column, row) == channel) {
          sum += frame.at(column, row);
          count++;
        }
      }
    }
    return sum / count;
  }

  /** 8-bit values of one plane of linear light. */
  static byte[] eightBit(float[] linear, int width, FilePlan files) {
    double push = Math.pow(2, files.pushStops());
    double[] coded = new double[linear.length];
    IntStream.range(0, linear.length)
        .parallel()
        .forEach(i -> coded[i] = 255 * curve(Math.min(1, linear[i] * push)));
    double[] crisp = files.sharpening() > 0 ? sharpened(coded, width, files.sharpening()) : coded;
    byte[] bytes = new byte[linear.length];
    for (int i = 0; i < bytes.length; i++) {
      bytes[i] = (byte) Math.max(0, Math.min(255, Math.rint(crisp[i])));
    }
    return bytes;
  }

  /** The sRGB curve for light in [0, 1]. */
  static double curve(double light) {
    return light <= 0.0031308 ? 12.92 * light : 1.055 * Math.pow(light, 1 / 2.4) - 0.055;
  }

  private static double[] sharpened(double[] values, int width, double amount) {
    int height = values.length / width;
    double[] crisp = new double[values.length];
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        double blurred = 0;
        for (int dy = -1; dy <= 1; dy++) {
          for (int dx = -1; dx <= 1; dx++) {
            int row = Math.max(0, Math.min(height - 1, y + dy));
            int column = Math.max(0, Math.min(width - 1, x + dx));
            blurred += (2 - Math.abs(dx)) * (2 - Math.abs(dy)) * values[row * width + column] / 16;
          }
        }
        double value = values[y * width + x];
        crisp[y * width + x] = value + amount * (value - blurred);
      }
    }
    return crisp;
  }
}
