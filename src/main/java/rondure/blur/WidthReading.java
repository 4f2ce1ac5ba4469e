package rondure.blur;

import java.util.ArrayList;
import java.util.List;
import rondure.base.RobustStats;
import rondure.stars.Star;
import rondure.stars.StarField;

/**
 * How wide the stars are besides the common smear, over the frame.
 *
 * @param medianPx2 second moment per axis without the common smear, median over the stars
 * @param bestPx2 the same in the sharpest part of the frame, as far as it is surely sharper
 * @param edgePx2 the same in the outer part or the softest part, as far as it is surely softer
 */
record WidthReading(double medianPx2, double bestPx2, double edgePx2) {
  private static final int CELLS_ALONG = 4;
  private static final int CELLS_ACROSS = 3;
  private static final int CELLS = CELLS_ALONG * CELLS_ACROSS;
  private static final double SURE = 1.5;
  private static final double LEAST_PX2 = 1 / 12.0;

  static WidthReading of(StarField field, SmearModel.SmearAt smear) {
    List<List<Double>> cells = new ArrayList<>();
    for (int i = 0; i < CELLS + 2; i++) {
      cells.add(new ArrayList<>());
    }
    List<Double> centre = cells.get(CELLS);
    List<Double> edge = cells.get(CELLS + 1);
    List<Double> all = new ArrayList<>();
    for (Star star : field.stars()) {
      double width = star.moments().meanPx2() - smear.lengthPx2(star.xPx(), star.yPx());
      all.add(width);
      cells.get(cell(field, star)).add(width);
      double radius = FieldShape.radius(field, star);
      if (radius <= FieldShape.CENTRE_LIMIT) {
        centre.add(width);
      } else if (radius > FieldShape.EDGE_LIMIT) {
        edge.add(width);
      }
    }
    return summary(median(all), cells, edge);
  }

  private static WidthReading summary(double median, List<List<Double>> cells, List<Double> edge) {
    double best = median;
    double worst = median;
    for (List<Double> cell : cells) {
      if (cell.size() >= FieldShape.LEAST_STARS_IN_ZONE) {
        double margin = SURE * error(cell);
        best = Math.min(best, median(cell) + margin);
        worst = Math.max(worst, median(cell) - margin);
      }
    }
    boolean edgeKnown = edge.size() >= FieldShape.LEAST_STARS_IN_ZONE;
    double outer = edgeKnown ? median(edge) - SURE * error(edge) : worst;
    return new WidthReading(
        Math.max(LEAST_PX2, median),
        Math.max(LEAST_PX2, best),
        Math.max(LEAST_PX2, Math.max(median, outer)));
  }

  private static int cell(StarField field, Star star) {
    boolean upright = field.heightPx() > field.widthPx();
    int columns = upright ? CELLS_ACROSS : CELLS_ALONG;
    int rows = upright ? CELLS_ALONG : CELLS_ACROSS;
    int column = (int) (columns * star.xPx() / field.widthPx());
    int row = (int) (rows * star.yPx() / field.heightPx());
    return Math.max(0, Math.min(rows - 1, row)) * columns
        + Math.max(0, Math.min(columns - 1, column));
  }

  private static double median(List<Double> values) {
    return RobustStats.median(values.stream().mapToDouble(v -> v).toArray());
  }

  private static double error(List<Double> values) {
    double spread = RobustStats.madSigma(values.stream().mapToDouble(v -> v).toArray());
    return 1.2533 * spread / Math.sqrt(values.size());
  }
}
