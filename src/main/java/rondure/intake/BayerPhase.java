package rondure.intake;

import java.util.Arrays;
import rondure.base.RobustStats;

/**
 * Notices a Bayer mosaic whose file names the wrong sites green, as happens to files that a program
 * wrapped, cut or turned upside down.
 *
 * <p>The two green sites of a cell see the same light through the same colour; red and blue ones do
 * not. The file is contradicted when the sites it names green differ by more than a tenth of their
 * light while the other two agree: the greens of a sensor differ by a few per cent at most (common
 * practice).
 */
final class BayerPhase {
  private static final int CELLS_ACROSS = 128;
  private static final int FEWEST_CELLS = 400;
  private static final double GREENS_DIFFER = 0.1;
  private static final double OTHERS_AGREE = 0.02;
  private static final double MOST_ERRORS = 10;

  private final int across;
  private final int down;
  private final RasterSize size;
  private final double[][] sites;

  BayerPhase(RasterSize size) {
    this.size = size;
    this.across = Math.min(CELLS_ACROSS, size.widthPx() / 2);
    this.down = Math.min(CELLS_ACROSS, size.heightPx() / 2);
    this.sites = new double[4][across * down];
  }

  /** Looks at all photosites of row {@code y}, black not subtracted. */
  void look(int y, float[] row) {
    int cellRow = (int) ((long) (y / 2) * down / Math.max(1, size.heightPx() / 2));
    if (cellRow >= down || row(cellRow) != y / 2) {
      return;
    }
    for (int i = 0; i < across; i++) {
      int x = (int) ((long) i * (size.widthPx() / 2) / across) * 2;
      sites[2 * (y % 2)][cellRow * across + i] = row[x];
      sites[2 * (y % 2) + 1][cellRow * across + i] = row[x + 1];
    }
  }

  /** The row of cells that stands for a row of the sample: the first that falls into it. */
  private int row(int cellRow) {
    int rows = size.heightPx() / 2;
    return (int) (((long) cellRow * rows + down - 1) / down);
  }

  /** True when the pixels say that green sits on the other diagonal of the cell. */
  boolean contradicts(Mosaic mosaic, BlackLevels black) {
    if (!mosaic.greenCheckerboard() || across * down < FEWEST_CELLS) {
      return false;
    }
    int green = mosaic.greenParity();
    Pair greens = pair(green == 0 ? 0 : 1, green == 0 ? 3 : 2, black);
    Pair others = pair(green == 0 ? 1 : 0, green == 0 ? 2 : 3, black);
    return greens.difference() > MOST_ERRORS * greens.error()
        && greens.difference() > GREENS_DIFFER * greens.level()
        && others.difference() < OTHERS_AGREE * others.level() + 2 * others.error()
        && others.difference() < GREENS_DIFFER * greens.difference() + 2 * others.error();
  }

  /** Two sites of a cell: how far apart they are, the error of that, and the light of both. */
  private record Pair(double difference, double error, double level) {}

  private Pair pair(int one, int two, BlackLevels black) {
    double blackOne = black.row(one / 2)[one % 2];
    double blackTwo = black.row(two / 2)[two % 2];
    double[] differences = new double[across * down];
    double[] levels = new double[across * down];
    for (int i = 0; i < differences.length; i++) {
      differences[i] = sites[one][i] - blackOne - (sites[two][i] - blackTwo);
      levels[i] = (sites[one][i] - blackOne + sites[two][i] - blackTwo) / 2;
    }
    double sigma = RobustStats.madSigma(differences);
    return new Pair(
        Math.abs(middleMean(differences)),
        sigma / Math.sqrt(differences.length / 2.0),
        middleMean(levels));
  }

  /** Mean of the middle half: blind to stars, and finer than the steps of whole counts. */
  private static double middleMean(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return Arrays.stream(sorted, sorted.length / 4, sorted.length - sorted.length / 4)
        .average()
        .orElse(0);
  }
}
