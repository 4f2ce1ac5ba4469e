package rondure.blur;

/** Fit of one frame's own parameters behind a lens that is known. */
final class OwnFit {
  private static final int ROUNDS = 14;
  private static final double SETTLED = 1e-6;
  private static final double MOST_DAMPING = 1e6;

  /** Starts whose loss differs by less tell nothing of the disc's sign. */
  private static final double SIGN_TELLS = 2;

  private final FrameModel model;
  private final double[] shared;
  private final Prior prior;
  private double[] own;
  private double loss;
  private boolean turned;

  private OwnFit(FrameModel model, double[] shared, Prior prior, double[] start) {
    this.model = model;
    this.shared = shared;
    this.prior = prior;
    this.own = start.clone();
  }

  double[] own() {
    return own.clone();
  }

  double loss() {
    return loss;
  }

  /**
   * The best of two starts: as given, and with the disc's sign turned. The sign as given stays
   * where the stars do not tell.
   */
  static OwnFit of(FrameModel model, double[] shared, Prior prior, double[] start) {
    OwnFit straight = new OwnFit(model, shared, prior, start).settle();
    double mean = model.meanDiscPx(shared, straight.own[FrameModel.DISC]);
    double[] turned = straight.own();
    turned[FrameModel.DISC] -= 2 * mean;
    OwnFit other = new OwnFit(model, shared, prior, turned).settle();
    if (other.loss < straight.loss - SIGN_TELLS) {
      other.turned = true;
      return other;
    }
    return straight;
  }

  /** Whether the disc's sign is not the start's. */
  boolean turned() {
    return turned;
  }

  private OwnFit settle() {
    FrameNormals normals = FrameNormals.of(model, shared, own, FrameModel.SHARED);
    loss = normals.loss() + prior.loss(own);
    double damping = 1e-3;
    for (int round = 0; round < ROUNDS && damping < MOST_DAMPING; round++) {
      double[] tried = stepped(normals, damping);
      FrameNormals next = FrameNormals.of(model, shared, tried, FrameModel.SHARED);
      double reached = next.loss() + prior.loss(tried);
      if (reached < loss) {
        boolean settled = loss - reached < SETTLED * loss;
        own = tried;
        normals = next;
        loss = reached;
        damping /= 8;
        if (settled) {
          break;
        }
      } else {
        damping *= 10;
      }
    }
    return this;
  }

  private double[] stepped(FrameNormals normals, double damping) {
    double[][] matrix = new double[FrameModel.OWN][FrameModel.OWN];
    double[] pull = new double[FrameModel.OWN];
    for (int k = 0; k < FrameModel.OWN; k++) {
      System.arraycopy(
          normals.matrix[FrameModel.SHARED + k], FrameModel.SHARED, matrix[k], 0, FrameModel.OWN);
      matrix[k][k] += prior.precision(k, own[k]);
      pull[k] = normals.pull[FrameModel.SHARED + k] + prior.pull(k, own[k]);
    }
    double[] step = new SymmetricSolve(matrix, damping).solve(pull);
    for (int k = 0; k < FrameModel.OWN; k++) {
      step[k] += own[k];
    }
    return step;
  }
}
