package rondure.sim;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.hipparchus.special.Erf;

/**
 * Paints stars into a plane of electrons: path, rays and core, integrated over every pixel.
 *
 * <p>The path's points are laid on a lattice of 1/8 px, repeated for every ray of the lens, and
 * each lattice node spreads as a Gaussian integrated over the pixels (differences of the error
 * function). Gaussians are cut where they fall below 4e-7 of their peak, those of a core's faint
 * wings where they fall below 4e-8 of the core's.
 */
final class LightPainter {
  private static final double REACH_SIGMAS = 5.4;
  private static final double LEAST_OF_PEAK = 4e-8;
  private static final double LONGEST_PIECE_PX = 48;

  /** A Gaussian and how far it is drawn. */
  private record Reach(double sigma, int reachPx) {}

  /** What a star's light is worth in the pixel at column x, row y, electrons. */
  interface Electrons {
    double at(int x, int y);
  }

  private final int widthPx;
  private final int heightPx;
  private final float[] electrons;
  private final List<StarCore.Part> core;
  private final FineGrid pathGrid = new FineGrid();
  private final FineGrid rayGrid = new FineGrid();
  private final FineGrid kernelGrid = new FineGrid();
  private final Map<Reach, double[]> pixelKernels = new HashMap<>();
  private final double peak;
  private double[] rowLight = new double[0];

  LightPainter(int widthPx, int heightPx, float[] electrons, List<StarCore.Part> core) {
    this.widthPx = widthPx;
    this.heightPx = heightPx;
    this.electrons = electrons;
    this.core = core;
    this.peak = core.stream().mapToDouble(part -> part.share() / part.variancePx2()).sum();
  }

  /**
   * Adds one star.
   *
   * @param x the path, px, a point for each equal time step
   * @param y the path, px
   * @param count points in use
   * @param rays of the lens at this star
   * @param flux the star's whole light by the colour of the pixel
   */
  void paint(double[] x, double[] y, int count, Rays rays, Electrons flux) {
    int from = 0;
    while (from < count) {
      int until = pieceEnd(x, y, from, count);
      paintPiece(x, y, from, until, rays, flux, 1.0 / count);
      from = until;
    }
  }

  /** First point that would stretch the piece beyond {@link #LONGEST_PIECE_PX}. */
  private static int pieceEnd(double[] x, double[] y, int from, int count) {
    double minX = x[from];
    double maxX = x[from];
    double minY = y[from];
    double maxY = y[from];
    for (int i = from + 1; i < count; i++) {
      minX = Math.min(minX, x[i]);
      maxX = Math.max(maxX, x[i]);
      minY = Math.min(minY, y[i]);
      maxY = Math.max(maxY, y[i]);
      if (maxX - minX > LONGEST_PIECE_PX || maxY - minY > LONGEST_PIECE_PX) {
        return i;
      }
    }
    return count;
  }

  private void paintPiece(
      double[] x, double[] y, int from, int until, Rays rays, Electrons flux, double amount) {
    double minX = Double.POSITIVE_INFINITY;
    double minY = Double.POSITIVE_INFINITY;
    double maxX = Double.NEGATIVE_INFINITY;
    double maxY = Double.NEGATIVE_INFINITY;
    for (int i = from; i < until; i++) {
      minX = Math.min(minX, x[i]);
      minY = Math.min(minY, y[i]);
      maxX = Math.max(maxX, x[i]);
      maxY = Math.max(maxY, y[i]);
    }
    pathGrid.cover(minX, minY, maxX, maxY);
    for (int i = from; i < until; i++) {
      pathGrid.add(x[i], y[i], amount);
    }
    boolean sharp = rays.count() == 1;
    FineGrid grid = sharp ? pathGrid : throughRays(rays);
    double sharing = FineGrid.SHARING_PX2 * (sharp ? 1 : 2);
    for (StarCore.Part part : core) {
      spread(grid, part.share(), Math.sqrt(Math.max(1e-4, part.variancePx2() - sharing)), flux);
    }
  }

  /** How far a part of the core shows, in its own σ. */
  private double reachSigmas(double share, double sigma) {
    double own = share / (sigma * sigma) / peak;
    double seen = Math.sqrt(2 * Math.max(0, Math.log(own / LEAST_OF_PEAK)));
    return Math.max(1, Math.min(REACH_SIGMAS, seen));
  }

  /** The path's light repeated for every ray; the rays are gathered on the lattice first. */
  private FineGrid throughRays(Rays rays) {
    double reach = 0;
    for (int i = 0; i < rays.count(); i++) {
      reach = Math.max(reach, Math.max(Math.abs(rays.x(i)), Math.abs(rays.y(i))));
    }
    kernelGrid.cover(-reach, -reach, reach, reach);
    for (int i = 0; i < rays.count(); i++) {
      kernelGrid.add(rays.x(i), rays.y(i), 1.0 / rays.count());
    }
    double right = pathGrid.xPx(pathGrid.columns() - 1);
    double bottom = pathGrid.yPx(pathGrid.rows() - 1);
    rayGrid.cover(
        pathGrid.leftPx() + kernelGrid.leftPx(),
        pathGrid.topPx() + kernelGrid.topPx(),
        right - kernelGrid.leftPx(),
        bottom - kernelGrid.topPx());
    rayGrid.addConvolved(pathGrid, kernelGrid);
    return rayGrid;
  }

  /** Spreads every node of the grid by one Gaussian, first along rows, then along columns. */
  private void spread(FineGrid grid, double share, double sigma, Electrons flux) {
    int reachPx = (int) Math.ceil(reachSigmas(share, sigma) * sigma + 0.5);
    double[] kernel =
        pixelKernels.computeIfAbsent(new Reach(sigma, reachPx), r -> pixelKernel(sigma, reachPx));
    int columnsPx = grid.columns() / FineGrid.PER_PX + 2 * reachPx + 1;
    int firstX = grid.leftPx() - reachPx;
    spreadRows(grid, kernel, reachPx, columnsPx);
    int rowsPx = grid.rows() / FineGrid.PER_PX + 2 * reachPx + 1;
    int firstY = grid.topPx() - reachPx;
    double[] patch = new double[columnsPx * rowsPx];
    for (int row = 0; row < grid.rows(); row++) {
      int px = row / FineGrid.PER_PX;
      int phase = row % FineGrid.PER_PX;
      for (int k = 0; k <= 2 * reachPx; k++) {
        double weight = kernel[k * FineGrid.PER_PX + FineGrid.PER_PX - 1 - phase];
        int target = (px + k) * columnsPx;
        int source = row * columnsPx;
        for (int column = 0; column < columnsPx; column++) {
          patch[target + column] += weight * rowLight[source + column];
        }
      }
    }
    addPatch(patch, firstX, firstY, columnsPx, share, flux);
  }

  private void spreadRows(FineGrid grid, double[] kernel, int reachPx, int columnsPx) {
    int size = grid.rows() * columnsPx;
    if (rowLight.length < size) {
      rowLight = new double[size];
    }
    Arrays.fill(rowLight, 0, size, 0);
    for (int row = 0; row < grid.rows(); row++) {
      for (int column = 0; column < grid.columns(); column++) {
        double light = grid.at(column, row);
        if (light > 0) {
          int target = row * columnsPx + column / FineGrid.PER_PX;
          int phase = FineGrid.PER_PX - 1 - column % FineGrid.PER_PX;
          for (int k = 0; k <= 2 * reachPx; k++) {
            rowLight[target + k] += light * kernel[k * FineGrid.PER_PX + phase];
          }
        }
      }
    }
  }

  /**
   * Share of a Gaussian's light in the pixel k - reach px from the node's px, for a node {@code
   * phase}/8 px past that px's centre; index k · 8 + 7 - phase.
   */
  private static double[] pixelKernel(double sigma, int reachPx) {
    double[] kernel = new double[(2 * reachPx + 1) * FineGrid.PER_PX];
    double scale = 1 / (sigma * Math.sqrt(2));
    for (int k = 0; k <= 2 * reachPx; k++) {
      for (int phase = 0; phase < FineGrid.PER_PX; phase++) {
        double distance = k - reachPx - (double) phase / FineGrid.PER_PX;
        kernel[k * FineGrid.PER_PX + FineGrid.PER_PX - 1 - phase] =
            0.5 * (Erf.erf((distance + 0.5) * scale) - Erf.erf((distance - 0.5) * scale));
      }
    }
    return kernel;
  }

  private void addPatch(
      double[] patch, int firstX, int firstY, int columnsPx, double share, Electrons flux) {
    int rowsPx = patch.length / columnsPx;
    for (int row = Math.max(0, -firstY); row < rowsPx && firstY + row < heightPx; row++) {
      int y = firstY + row;
      for (int column = Math.max(0, -firstX); column < columnsPx; column++) {
        int x = firstX + column;
        if (x >= widthPx) {
          break;
        }
        double light = patch[row * columnsPx + column];
        if (light > 0) {
          electrons[y * widthPx + x] += (float) (share * light * flux.at(x, y));
        }
      }
    }
  }
}
