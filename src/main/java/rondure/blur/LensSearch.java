package rondure.blur;

import java.util.ArrayList;
import java.util.List;

/**
 * Finds the lens and core that some frames of a scene share, from several starts: the disc enters
 * squared, so that curvature, astigmatism and defocus of the other sign look alike at first.
 */
final class LensSearch {
  /** More do not tell more of the lens. */
  static final int MOST_FRAMES = 40;

  private static final int FIRST_ROUNDS = 8;
  private static final int STARS_AT_FIRST = 100;
  private static final int ROUNDS = 30;
  private static final int SIGN_ROUNDS = 3;
  private static final double USUAL_DISC_PX = 3;
  private static final double USUAL_COMA_PX2 = 30;

  /** Half-maximum widths of usual cores differ by a seventh, 0.3 px² of 1 px². */
  private static final double USUAL_CORE_PX2 = 0.3;

  /** Tilt to the right and down, curvature, astigmatism, px of disc. */
  private static final double[][] STARTS = {
    {0.1, 0.1, 0.7, 0.7},
    {0.1, 0.1, 0.7, -0.7},
    {0.1, 0.1, -0.7, 0.7},
    {0.1, 0.1, -0.7, -0.7},
    {3, 0.1, 0.5, 0.3},
    {0.1, 3, 0.5, 0.3},
    {3, 3, 0.5, 0.3},
    {3, -3, 0.5, 0.3}
  };

  private final List<FrameModel> models;
  private final CoreAssumption core;
  private final double misfit;

  LensSearch(List<FrameModel> models, CoreAssumption core, double misfit) {
    this.misfit = misfit;
    this.models = models;
    this.core = core;
  }

  /** From several starts. */
  double[] anew(
      List<Integer> frames, OwnExpectations expected, double[] shared, List<double[]> own) {
    double[][] ownStart = of(frames, own);
    SceneFit best = null;
    for (double[] surfaces : STARTS) {
      double[] start = shared.clone();
      System.arraycopy(surfaces, 0, start, FrameModel.TILT_RIGHT, surfaces.length);
      SceneFit tried = fit(frames, expected, STARS_AT_FIRST).from(start, ownStart, FIRST_ROUNDS);
      best = best == null || tried.loss() < best.loss() ? tried : best;
    }
    return settled(frames, expected, best);
  }

  /** From what was found before. */
  double[] refined(
      List<Integer> frames, OwnExpectations expected, double[] shared, List<double[]> own) {
    SceneFit fit = fit(frames, expected, Integer.MAX_VALUE).from(shared, of(frames, own), ROUNDS);
    return settled(frames, expected, fit);
  }

  /** Continues, turning the discs of single frames where that fits better. */
  private double[] settled(List<Integer> frames, OwnExpectations expected, SceneFit begun) {
    SceneFit fit =
        fit(frames, expected, Integer.MAX_VALUE).from(begun.shared(), begun.allOwn(), ROUNDS);
    for (int round = 0; round < SIGN_ROUNDS; round++) {
      double[][] own = fit.allOwn();
      boolean turned = false;
      for (int k = 0; k < own.length; k++) {
        FrameModel model = models.get(frames.get(k));
        OwnFit single = OwnFit.of(model, fit.shared(), expected.of(frames.get(k)), own[k]);
        turned |= single.turned();
        own[k] = single.own();
      }
      if (!turned) {
        break;
      }
      fit = fit(frames, expected, Integer.MAX_VALUE).from(fit.shared(), own, ROUNDS);
    }
    return fit.shared();
  }

  /** What is expected of the shared parameters beforehand. */
  Prior sharedPrior() {
    Prior shared = new Prior(FrameModel.SHARED);
    for (int k = FrameModel.TILT_RIGHT; k <= FrameModel.ASTIGMATISM; k++) {
      shared.expect(k, 0, USUAL_DISC_PX);
    }
    shared.expect(FrameModel.COMA, 0, USUAL_COMA_PX2);
    core.usualPx2()
        .ifPresent(px2 -> shared.expect(FrameModel.CORE, px2, USUAL_CORE_PX2 / Math.sqrt(misfit)));
    return shared;
  }

  private SceneFit fit(List<Integer> frames, OwnExpectations expected, int stars) {
    List<FrameModel> chosen = new ArrayList<>();
    frames.forEach(frame -> chosen.add(models.get(frame)));
    return new SceneFit(chosen, sharedPrior(), expected.of(frames), core.leastPx2(), stars);
  }

  private static double[][] of(List<Integer> frames, List<double[]> own) {
    return frames.stream().map(frame -> own.get(frame).clone()).toArray(double[][]::new);
  }
}
