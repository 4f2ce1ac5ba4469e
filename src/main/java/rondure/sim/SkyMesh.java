package rondure.sim;

import java.util.stream.IntStream;

/**
 * Electrons of the empty sky in every pixel: worked out at every 16th px, linear between.
 *
 * <p>A pixel of a flat sensor sees a solid angle (p/f)² cos³ θ.
 */
final class SkyMesh {
  private static final int STEP_PX = 16;

  private SkyMesh() {}

  /** Adds the sky to {@code electrons}, without filters. */
  static void add(
      NightPlan plan, Optics optics, SkyLight light, double[] groundFromCamera, float[] electrons) {
    int width = plan.camera().widthPx();
    int height = plan.camera().heightPx();
    int columns = (width - 1) / STEP_PX + 2;
    int rows = (height - 1) / STEP_PX + 2;
    double zenith = optics.zenithSkyElectrons();
    double[] nodes = new double[columns * rows];
    IntStream.range(0, rows)
        .parallel()
        .forEach(
            row -> {
              for (int column = 0; column < columns; column++) {
                double[] camera = optics.image().direction(column * STEP_PX, row * STEP_PX);
                double[] ground = Turn.apply(groundFromCamera, camera);
                nodes[row * columns + column] =
                    zenith
                        * light.brightness(ground)
                        * optics.vignetting(column * STEP_PX, row * STEP_PX)
                        * Math.pow(camera[2], 3);
              }
            });
    IntStream.range(0, height).parallel().forEach(y -> addRow(nodes, columns, y, width, electrons));
  }

  private static void addRow(double[] nodes, int columns, int y, int width, float[] electrons) {
    int row = y / STEP_PX;
    double down = (double) (y % STEP_PX) / STEP_PX;
    for (int x = 0; x < width; x++) {
      int node = row * columns + x / STEP_PX;
      double right = (double) (x % STEP_PX) / STEP_PX;
      double above = nodes[node] + right * (nodes[node + 1] - nodes[node]);
      double below =
          nodes[node + columns] + right * (nodes[node + columns + 1] - nodes[node + columns]);
      electrons[y * width + x] += (float) (above + down * (below - above));
    }
  }
}
