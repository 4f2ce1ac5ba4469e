package rondure.blur;

/**
 * Normal equations of one frame's stars at a point of the parameters, with Huber's weights.
 *
 * <p>A star's three residuals share one weight, min(1, k/u) with u their length in errors: k = 2.8
 * keeps 95 % of clean stars at full weight (the square of u follows χ² with three degrees of
 * freedom). Huber 1964, Ann. Math. Statist. 35, 73, from memory.
 */
final class FrameNormals {
  private static final double HUBER = 2.8;

  /** Second derivatives, approximately (Gauss-Newton), shared parameters first. */
  final double[][] matrix = new double[FrameModel.ALL][FrameModel.ALL];

  /** Minus the gradient. */
  final double[] pull = new double[FrameModel.ALL];

  /** Sum of Huber's loss, ½u² for small u. */
  private double loss;

  private final FrameModel model;
  private final double[] predicted = new double[3];
  private final double[][] slopes = new double[FrameModel.ALL][3];
  private final double[][] rows = new double[3][FrameModel.ALL];
  private final double[][] weightedRows = new double[3][FrameModel.ALL];
  private final double[] residual = new double[3];

  private FrameNormals(FrameModel model) {
    this.model = model;
  }

  /** Of all stars; parameters before {@code from} are held fixed. */
  static FrameNormals of(FrameModel model, double[] shared, double[] own, int from) {
    return of(model, shared, own, from, model.stars().count);
  }

  /** Of the brightest stars alone, for all parameters. */
  static FrameNormals ofBrightest(FrameModel model, double[] shared, double[] own, int most) {
    return of(model, shared, own, 0, Math.min(most, model.stars().count));
  }

  private static FrameNormals of(
      FrameModel model, double[] shared, double[] own, int from, int stars) {
    FrameNormals normals = new FrameNormals(model);
    for (int i = 0; i < stars; i++) {
      normals.add(i, shared, own, from);
    }
    normals.mirror();
    return normals;
  }

  /**
   * Of the stars of each block of the frame, for resampling.
   *
   * @param blockOf block of each star
   */
  static FrameNormals[] ofBlocks(
      FrameModel model, double[] shared, double[] own, int[] blockOf, int blocks) {
    FrameNormals[] normals = new FrameNormals[blocks];
    for (int block = 0; block < blocks; block++) {
      normals[block] = new FrameNormals(model);
    }
    for (int i = 0; i < model.stars().count; i++) {
      normals[blockOf[i]].add(i, shared, own, 0);
    }
    for (FrameNormals one : normals) {
      one.mirror();
    }
    return normals;
  }

  /**
   * Of the stars of blocks of a frame, each block so many times.
   *
   * @param blocks all of one frame
   * @param times of each block
   */
  static FrameNormals resampled(FrameNormals[] blocks, int[] times) {
    FrameNormals sum = new FrameNormals(blocks[0].model);
    for (int block = 0; block < blocks.length; block++) {
      if (times[block] > 0) {
        sum.add(blocks[block], times[block]);
      }
    }
    sum.mirror();
    return sum;
  }

  private void add(FrameNormals block, int times) {
    loss += times * block.loss;
    for (int k = 0; k < FrameModel.ALL; k++) {
      pull[k] += times * block.pull[k];
      for (int column = k; column < FrameModel.ALL; column++) {
        matrix[k][column] += times * block.matrix[k][column];
      }
    }
  }

  double loss() {
    return loss;
  }

  /**
   * Huber's loss of a star.
   *
   * @param square sum of its three residuals' squares, in errors
   */
  static double loss(double square) {
    double u = Math.sqrt(square);
    return u <= HUBER ? square / 2 : HUBER * u - HUBER * HUBER / 2;
  }

  /** Huber's weight of a star, see {@link #loss(double)}. */
  static double weight(double square) {
    double u = Math.sqrt(square);
    return u <= HUBER ? 1 : HUBER / u;
  }

  private void add(int i, double[] shared, double[] own, int from) {
    FrameStars stars = model.stars();
    model.predict(i, shared, own, predicted, slopes);
    double square = 0;
    for (int part = 0; part < 3; part++) {
      double off = (stars.seen[3 * i + part] - predicted[part]) / stars.error[3 * i + part];
      square += off * off;
    }
    double weight = weight(square);
    loss += loss(square);
    for (int part = 0; part < 3; part++) {
      double error = stars.error[3 * i + part];
      fillRow(part, from, weight / (error * error));
      residual[part] = stars.seen[3 * i + part] - predicted[part];
    }
    addRows(from);
  }

  private void fillRow(int part, int from, double weight) {
    double[] row = rows[part];
    double[] weighted = weightedRows[part];
    for (int k = from; k < FrameModel.ALL; k++) {
      row[k] = slopes[k][part];
      weighted[k] = weight * row[k];
    }
  }

  /** Of the star's three numbers at once: each sum is fetched and put back once. */
  private void addRows(int from) {
    double[] round = rows[0];
    double[] along = rows[1];
    double[] diagonal = rows[2];
    for (int k = from; k < FrameModel.ALL; k++) {
      double ofRound = weightedRows[0][k];
      double ofAlong = weightedRows[1][k];
      double ofDiagonal = weightedRows[2][k];
      pull[k] += ofRound * residual[0] + ofAlong * residual[1] + ofDiagonal * residual[2];
      double[] into = matrix[k];
      for (int column = k; column < FrameModel.ALL; column++) {
        into[column] +=
            ofRound * round[column] + ofAlong * along[column] + ofDiagonal * diagonal[column];
      }
    }
  }

  private void mirror() {
    for (int row = 0; row < FrameModel.ALL; row++) {
      for (int column = 0; column < row; column++) {
        matrix[row][column] = matrix[column][row];
      }
    }
  }
}
