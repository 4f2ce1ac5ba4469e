package rondure.blur;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** The parameters of a scene under one assumption of its core. */
final class SceneSolution {
  /** Second moment of a trail over that of the star. */
  private static final double LONGEST_TRAIL = 0.5;

  private final List<FrameModel> models;
  private final double[] shared;
  private final List<double[]> own;
  private final List<Shake> shakes;
  private final Expected expected;

  /**
   * What was expected beforehand, and of whom the shared parameters were asked.
   *
   * @param together frames solved together
   */
  record Expected(Prior shared, OwnExpectations own, List<Integer> together) {
    Expected {
      together = List.copyOf(together);
    }
  }

  /**
   * @param own of each frame
   * @param shakes of each frame
   */
  SceneSolution(
      List<FrameModel> models,
      double[] shared,
      List<double[]> own,
      List<Shake> shakes,
      Expected expected) {
    this.models = List.copyOf(models);
    this.shared = shared.clone();
    this.own = List.copyOf(own);
    this.shakes = List.copyOf(shakes);
    this.expected = expected;
  }

  Prior sharedPrior() {
    return expected.shared();
  }

  Prior ownPrior(int frame) {
    return expected.own().of(frame);
  }

  OwnExpectations expectations() {
    return expected.own();
  }

  /** Own parameters of all frames; copies. */
  List<double[]> allOwn() {
    return own.stream().map(double[]::clone).toList();
  }

  List<Shake> shakes() {
    return shakes;
  }

  /** Frames from which the shared parameters were found. */
  List<Integer> together() {
    return expected.together();
  }

  List<FrameModel> models() {
    return models;
  }

  /** See {@link FrameModel}; a copy. */
  double[] shared() {
    return shared.clone();
  }

  /** A frame's own parameters, see {@link FrameModel}; a copy. */
  double[] own(int frame) {
    return own.get(frame).clone();
  }

  /** What was found of a frame's shaking. */
  Shake shake(int frame) {
    return shakes.get(frame);
  }

  double corePx2() {
    return shared[FrameModel.CORE];
  }

  LensSurface lens() {
    return models.get(0).lens(shared);
  }

  /**
   * Half of χ² over those of some frames with one image of each star, errors widened by what a
   * smooth model does not describe.
   */
  double loss(List<Integer> frames) {
    double sum = expected.shared().loss(shared);
    for (int j : frames) {
      double[] at = own.get(j);
      FrameModel model = models.get(j);
      if (!model.whole()) {
        continue;
      }
      sum += FrameNormals.of(model, shared, at, FrameModel.SHARED).loss() + ownPrior(j).loss(at);
    }
    return sum;
  }

  /** The same where measured widths may be off with the width, see {@link TolerantLoss}. */
  double tolerantLoss(List<Integer> frames, double curveShare) {
    double sum =
        expected.shared().loss(shared) + new TolerantLoss(this, frames, curveShare).value();
    for (int j : frames) {
      if (models.get(j).whole()) {
        sum += ownPrior(j).loss(own.get(j));
      }
    }
    return sum;
  }

  /**
   * Mean second moment of the discs of a frame's stars, px²; 0 where there is none so near.
   *
   * @param within of so many half diagonals from the centre
   */
  double discPx2(int frame, double within) {
    FrameModel model = models.get(frame);
    FieldPlaces places = model.stars().places;
    double sum = 0;
    int counted = 0;
    for (int i = 0; i < model.stars().count; i++) {
      if (Math.hypot(places.x[i], places.y[i]) <= within) {
        sum += model.discPx2(i, shared, own.get(frame));
        counted++;
      }
    }
    return counted == 0 ? 0 : sum / counted;
  }

  /**
   * Unshaken frames of short trails whose stars are as sharp as the sharpest's, sharpest first.
   *
   * @param share by which second moments may differ
   * @param most so many at most
   */
  List<Integer> equallySharp(double share, int most) {
    Comparator<Integer> sharper = Comparator.comparingDouble(this::stillPx2);
    List<Integer> calm =
        IntStream.range(0, models.size())
            .boxed()
            .filter(k -> models.get(k).whole() && !shakes.get(k).proven() && isPoint(k))
            .sorted(sharper)
            .toList();
    return calm.stream()
        .filter(k -> stillPx2(k) <= (1 + share) * stillPx2(calm.get(0)))
        .limit(most)
        .toList();
  }

  /** Whether the trail is short beside the star. */
  private boolean isPoint(int frame) {
    FrameModel model = models.get(frame);
    double moved = model.lengthening() * model.stars().places.centreMoved[0];
    return moved <= LONGEST_TRAIL * stillPx2(frame);
  }

  private double stillPx2(int frame) {
    FrameModel model = models.get(frame);
    return model.stars().stillRoundPx2(model.lengthening());
  }

  /** What the parameters predict for each star of a frame. */
  double[] predicted(int frame) {
    FrameModel model = models.get(frame);
    double[] result = new double[3 * model.stars().count];
    double[] three = new double[3];
    double[][] slopes = new double[FrameModel.ALL][3];
    for (int i = 0; i < model.stars().count; i++) {
      model.predict(i, shared, own.get(frame), three, slopes);
      System.arraycopy(three, 0, result, 3 * i, 3);
    }
    return result;
  }
}
