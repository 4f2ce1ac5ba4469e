package rondure.stars;

import java.util.Arrays;

/**
 * Cells that show things rather than sky.
 *
 * <p>Between its stars a sky is smooth: its scatter over a cell, slope taken out, is that of
 * neighbouring pixels. How far the two agree depends on the file (developing correlates pixels), so
 * the smoothest quarter of the frame's own cells sets the measure. A few cells are always much
 * rougher: the rim of the ground, bright stars. Where they are more than an eighth of the sky, and
 * hardly a star stands apart from rough cells as stars behind clouds or an aurora do, the frame
 * shows objects (a room, a house, foliage): lights there are no stars, nor those right beside them.
 */
final class Texture {
  private static final double MUCH_ROUGHER = 3;
  private static final double ROUGHER = 2;
  private static final double MANY = 0.125;

  /** So many stars on open cells prove a sky, however rough its other cells. */
  private static final double PROOF_STARS = 8;

  private static final double SMOOTHEST = 0.25;

  private final BackgroundMesh background;
  private final MeshGrid cells;

  private Texture(BackgroundMesh background) {
    this.background = background;
    this.cells = background.cellNoise();
  }

  /**
   * Takes rough cells and their neighbours out of the sky where they are no sky.
   *
   * @param stars how many clear, compact sources each cell holds
   */
  static void takeOut(BackgroundMesh background, double[] stars, boolean[] sky) {
    Texture texture = new Texture(background);
    if (count(texture.find(sky, MUCH_ROUGHER)) <= MANY * count(sky)) {
      return;
    }
    boolean[] rough = texture.find(sky, ROUGHER);
    boolean[] open = new boolean[sky.length];
    double starsOnOpen = 0;
    for (int cell = 0; cell < sky.length; cell++) {
      open[cell] = sky[cell] && !texture.isNear(rough, cell);
      starsOnOpen += open[cell] ? stars[cell] : 0;
    }
    if (starsOnOpen < PROOF_STARS) {
      System.arraycopy(open, 0, sky, 0, sky.length);
    }
  }

  private static int count(boolean[] marked) {
    int count = 0;
    for (boolean mark : marked) {
      count += mark ? 1 : 0;
    }
    return count;
  }

  private boolean[] find(boolean[] sky, double factor) {
    double[] ratios = new double[sky.length];
    double[] known = new double[sky.length];
    int count = 0;
    for (int cell = 0; cell < sky.length; cell++) {
      ratios[cell] = sky[cell] ? ratio(cell) : 0;
      if (ratios[cell] > 0) {
        known[count++] = ratios[cell];
      }
    }
    Arrays.sort(known, 0, count);
    double usual = count == 0 ? Double.POSITIVE_INFINITY : known[(int) (SMOOTHEST * count)];
    boolean[] textured = new boolean[sky.length];
    for (int cell = 0; cell < sky.length; cell++) {
      textured[cell] = ratios[cell] > factor * usual;
    }
    return textured;
  }

  /** Scatter over the cell to that of neighbouring pixels; 0 where either is unknown. */
  private double ratio(int cell) {
    int column = cell % cells.columns();
    int row = cell / cells.columns();
    double scatter = cells.cell(cell);
    double near = background.roughness().cell(cell);
    double across = background.cellLevel().steadyStep(column, row, 1, 0);
    double down = background.cellLevel().steadyStep(column, row, 0, 1);
    double variance = scatter * scatter - (across * across + down * down) / 12;
    return near > 0 && variance > 0 ? Math.sqrt(variance) / near : 0;
  }

  private boolean isNear(boolean[] marked, int cell) {
    int column = cell % cells.columns();
    int row = cell / cells.columns();
    for (int j = Math.max(0, row - 1); j <= Math.min(cells.rows() - 1, row + 1); j++) {
      for (int i = Math.max(0, column - 1); i <= Math.min(cells.columns() - 1, column + 1); i++) {
        if (marked[j * cells.columns() + i]) {
          return true;
        }
      }
    }
    return false;
  }
}
