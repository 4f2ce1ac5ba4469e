package rondure.report;

import java.util.ArrayList;
import java.util.List;
import rondure.night.NightFrame;
import rondure.report.picture.LensField;
import rondure.stars.Star;

/** Where over a frame stars are drawn as the lens alone makes them. */
final class LensPlaces {
  /** Places along the longer side; as many per length along the shorter. */
  private static final int ALONG = 7;

  /** Stars about a place that make it a measured one. */
  private static final int FEWEST = 3;

  private final LensSetup setup;
  private final int columns;
  private final int rows;

  private LensPlaces(LensSetup setup) {
    this.setup = setup;
    double cell = Math.max(setup.widthPx(), setup.heightPx()) / (double) ALONG;
    columns = (int) Math.max(1, Math.rint(setup.widthPx() / cell));
    rows = (int) Math.max(1, Math.rint(setup.heightPx() / cell));
  }

  /** Row by row, the middles of cells of like size. */
  static List<LensField.Place> of(LensSetup setup, LensModel lens) {
    LensPlaces grid = new LensPlaces(setup);
    int[] stars = grid.stars();
    List<LensField.Place> places = new ArrayList<>();
    for (int i = 0; i < stars.length; i++) {
      double right = (i % grid.columns + 0.5) / grid.columns;
      double down = (i / grid.columns + 0.5) / grid.rows;
      places.add(
          new LensField.Place(
              right * setup.widthPx() - 0.5,
              down * setup.heightPx() - 0.5,
              lens.star((2 * right - 1) * lens.sideX(), (2 * down - 1) * lens.sideY(), 1),
              stars[i] >= FEWEST));
    }
    return places;
  }

  /** Stars of all frames in each cell. */
  private int[] stars() {
    int[] counts = new int[columns * rows];
    for (NightFrame frame : setup.frames()) {
      for (Star star : frame.measurement().orElseThrow().field().stars()) {
        int column = cell(star.xPx(), setup.widthPx(), columns);
        counts[cell(star.yPx(), setup.heightPx(), rows) * columns + column]++;
      }
    }
    return counts;
  }

  private static int cell(double atPx, int lengthPx, int cells) {
    int cell = (int) Math.floor((atPx + 0.5) / lengthPx * cells);
    return Math.max(0, Math.min(cells - 1, cell));
  }
}
