package rondure.blur;

import java.util.Arrays;
import java.util.List;

/**
 * Joint fit of the shared lens and core and of every frame's own parameters: Levenberg and
 * Marquardt's damped steps, the frames' own parameters eliminated one frame at a time (the normal
 * equations are an arrow).
 */
final class SceneFit {
  private static final double SETTLED = 1e-5;
  private static final double FIRST_DAMPING = 1e-3;
  private static final double MOST_DAMPING = 1e8;

  private final List<FrameModel> models;
  private final Prior sharedPrior;
  private final List<Prior> ownPriors;
  private final double leastCorePx2;
  private final int mostStars;
  private double[] shared;
  private double[][] own;
  private double loss;

  /**
   * @param leastCorePx2 what diffraction and pixel leave of the finest star
   * @param mostStars of each frame, the brightest
   */
  SceneFit(
      List<FrameModel> models,
      Prior sharedPrior,
      List<Prior> ownPriors,
      double leastCorePx2,
      int mostStars) {
    this.mostStars = mostStars;
    this.models = models;
    this.sharedPrior = sharedPrior;
    this.ownPriors = ownPriors;
    this.leastCorePx2 = leastCorePx2;
  }

  double[] shared() {
    return shared.clone();
  }

  /** Own parameters of each frame; a copy. */
  double[][] allOwn() {
    return copy(own);
  }

  private static double[][] copy(double[][] rows) {
    return Arrays.stream(rows).map(double[]::clone).toArray(double[][]::new);
  }

  /** Half the sum of weighted squares, expectations included. */
  double loss() {
    return loss;
  }

  /** Improves a start until it settles; this. */
  SceneFit from(double[] sharedStart, double[][] ownStart, int rounds) {
    shared = sharedStart.clone();
    own = copy(ownStart);
    double damping = FIRST_DAMPING;
    FrameNormals[] normals = normals(shared, own);
    loss = loss(normals, shared, own);
    for (int round = 0; round < rounds && damping < MOST_DAMPING; round++) {
      Step step = step(normals, damping);
      FrameNormals[] tried = normals(step.shared, step.own);
      double reached = loss(tried, step.shared, step.own);
      if (reached < loss) {
        boolean settled = loss - reached < SETTLED * loss;
        shared = step.shared;
        own = step.own;
        normals = tried;
        loss = reached;
        damping = Math.max(1e-9, damping / 8);
        if (settled) {
          break;
        }
      } else {
        damping = 10 * Math.max(1e-6, damping);
      }
    }
    return this;
  }

  private FrameNormals[] normals(double[] sharedAt, double[][] ownAt) {
    FrameNormals[] normals = new FrameNormals[models.size()];
    for (int j = 0; j < normals.length; j++) {
      normals[j] = FrameNormals.ofBrightest(models.get(j), sharedAt, ownAt[j], mostStars);
    }
    return normals;
  }

  private double loss(FrameNormals[] normals, double[] sharedAt, double[][] ownAt) {
    double sum = sharedPrior.loss(sharedAt);
    for (int j = 0; j < normals.length; j++) {
      sum += normals[j].loss() + ownPriors.get(j).loss(ownAt[j]);
    }
    return sum;
  }

  private static final class Step {
    private double[] shared;
    private double[][] own;
  }

  private Step step(FrameNormals[] normals, double damping) {
    ArrowSystem system = new ArrowSystem(sharedPrior, shared, damping);
    for (int j = 0; j < normals.length; j++) {
      system.add(normals[j].matrix, normals[j].pull, ownPriors.get(j), own[j]);
    }
    double[] sharedStep = system.sharedStep();
    Step step = new Step();
    step.shared = new double[FrameModel.SHARED];
    for (int k = 0; k < FrameModel.SHARED; k++) {
      step.shared[k] = shared[k] + sharedStep[k];
    }
    step.shared[FrameModel.COMA] = Math.max(0, step.shared[FrameModel.COMA]);
    step.shared[FrameModel.CORE] = Math.max(leastCorePx2, step.shared[FrameModel.CORE]);
    step.own = new double[normals.length][FrameModel.OWN];
    for (int j = 0; j < normals.length; j++) {
      double[] ownStep = system.ownStep(j, sharedStep);
      for (int k = 0; k < FrameModel.OWN; k++) {
        step.own[j][k] = own[j][k] + ownStep[k];
      }
    }
    return step;
  }
}
