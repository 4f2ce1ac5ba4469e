package rondure.blur;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Finds the lens and core that some frames of a scene share, from several starts: the disc enters
 * squared, so that curvature, astigmatism and defocus of the other sign look alike at first.
 */
final class LensSearch {
  /** More do not tell more of the lens. */
  static final int MOST_FRAMES = 40;

  /** Frames that tell which other lenses are worth settling. */
  private static final int MOST_ASKED = 12;

  private static final int FIRST_ROUNDS = 8;
  private static final double LEAST_LARGE_PX = 2;
  private static final int STARS_AT_FIRST = 100;
  private static final int ROUNDS = 30;
  private static final int SIGN_ROUNDS = 3;
  private static final double USUAL_DISC_PX = 3;
  private static final double USUAL_COMA_PX2 = 30;

  /** Curvature of a field that counts as flat; ten times as much astigmatism may be beside coma. */
  private static final double FLAT_PX = 0.02;

  private static final double SAME_CORE_SHARE = 0.1;

  /** Tilt to the right and down, curvature, astigmatism, px of disc. */
  private static final double[][] STARTS = {
    {0.1, 0.1, 0.7, 0.7}, {0.1, 0.1, 0.7, -0.7}, {0.1, 0.1, -0.7, 0.7}, {0.1, 0.1, -0.7, -0.7}
  };

  /** Tilt and curvature as shares of the largest disc over the field. */
  private static final double[][] LARGE_STARTS = {
    {1, 0.02, 0.05, 0.05}, {0.02, 1, 0.05, 0.05}, {1, 1, 0.05, 0.05}, {1, -1, 0.05, 0.05}
  };

  private final List<FrameModel> models;
  private final CoreAssumption core;
  private final double misfit;
  private final double usualDiscPx;

  LensSearch(List<FrameModel> models, CoreAssumption core, double misfit) {
    this.misfit = misfit;
    this.models = models;
    this.core = core;
    usualDiscPx = Math.max(USUAL_DISC_PX, growthPx());
  }

  /** The disc that would make the narrowest stars of a frame its widest, where that is least. */
  private double growthPx() {
    double least =
        models.stream()
            .mapToDouble(
                model ->
                    model.stars().widestStillPx2(model.lengthening())
                        - model.stars().narrowestStillPx2(model.lengthening()))
            .min()
            .orElse(0);
    return 4 * Math.sqrt(Math.max(0, least));
  }

  /** From several starts. */
  double[] anew(
      List<Integer> frames, OwnExpectations expected, double[] shared, List<double[]> own) {
    double[][] oneSide = of(frames, own);
    double[][] bothSides = signed(frames, oneSide);
    List<double[]> starts = new ArrayList<>(List.of(STARTS));
    double largest = largestDiscPx(frames, shared[FrameModel.CORE]);
    for (double[] shares : LARGE_STARTS) {
      starts.add(Arrays.stream(shares).map(share -> share * largest).toArray());
    }
    SceneFit best = null;
    for (double[] surfaces : starts) {
      double[] start = shared.clone();
      System.arraycopy(surfaces, 0, start, FrameModel.TILT_RIGHT, surfaces.length);
      best = better(best, fit(frames, expected, STARS_AT_FIRST).from(start, oneSide, FIRST_ROUNDS));
      if (!Arrays.deepEquals(oneSide, bothSides)) {
        best =
            better(
                best, fit(frames, expected, STARS_AT_FIRST).from(start, bothSides, FIRST_ROUNDS));
      }
    }
    return settled(frames, expected, best);
  }

  private static SceneFit better(SceneFit best, SceneFit tried) {
    return best == null || tried.loss() < best.loss() ? tried : best;
  }

  /** The same with discs on the side of focus where the stars seem to put them. */
  private double[][] signed(List<Integer> frames, double[][] own) {
    double[] round = Arrays.stream(own).mapToDouble(row -> row[FrameModel.DISC]).toArray();
    double[] signs = DiscSigns.of(frames.stream().map(models::get).toList(), round);
    double[][] signed = Arrays.stream(own).map(double[]::clone).toArray(double[][]::new);
    for (int k = 0; k < signs.length; k++) {
      signed[k][FrameModel.DISC] *= signs[k];
    }
    return signed;
  }

  /** The disc that widens a core to the widest stars of the sharpest frame. */
  private double largestDiscPx(List<Integer> frames, double corePx2) {
    double least = Double.POSITIVE_INFINITY;
    for (int frame : frames) {
      FrameModel model = models.get(frame);
      least = Math.min(least, model.stars().widestStillPx2(model.lengthening()));
    }
    return Math.max(LEAST_LARGE_PX, 4 * Math.sqrt(Math.max(0, least - corePx2)));
  }

  /**
   * Other lenses that may fit as well: curvature and astigmatism widen alike about a sharp centre,
   * and coma as discs that grow from a small one. A few frames tell which are worth settling; where
   * nothing tells, fits stay about where they start, all round the circle of equal widening.
   *
   * @param shared the lens found
   * @param own of each frame behind it
   * @param settled whether that lens is settled already, its coma being of this kind
   */
  List<double[]> rivals(
      List<Integer> frames,
      OwnExpectations expected,
      double[] shared,
      List<double[]> own,
      boolean settled) {
    List<Integer> asked = spread(frames);
    double[][] at = of(asked, own);
    List<SceneFit> quick = new ArrayList<>();
    SceneFit same = fit(asked, expected, STARS_AT_FIRST).from(shared, at, FIRST_ROUNDS);
    quick.add(same);
    for (double[] start : LensRivals.starts(shared)) {
      quick.add(fit(asked, expected, STARS_AT_FIRST).from(start, at, FIRST_ROUNDS));
    }
    List<SceneFit> known = settled ? List.of(same) : List.of();
    List<double[]> rivals = new ArrayList<>();
    for (SceneFit rival : LensRivals.worthSettling(quick, known, misfit)) {
      rivals.add(refined(frames, expected, rival.shared(), behind(rival, expected, own)));
    }
    return rivals;
  }

  /** The lens of a flat field whose coma widens the corners of about as sharp stars. */
  double[] comatic(
      List<Integer> frames, OwnExpectations expected, double[] shared, List<double[]> own) {
    List<FrameModel> chosen = frames.stream().map(models::get).toList();
    Prior flat = sharedPrior().expect(FrameModel.CURVATURE, 0, FLAT_PX);
    flat.expect(FrameModel.ASTIGMATISM, 0, 10 * FLAT_PX);
    if (core.usualPx2().isEmpty()) {
      double px2 = shared[FrameModel.CORE];
      flat.expect(FrameModel.CORE, px2, SAME_CORE_SHARE * px2);
    }
    SceneFit fit =
        new SceneFit(chosen, flat, expected.of(frames), core.leastPx2(), Integer.MAX_VALUE);
    return fit.from(LensRivals.comatic(shared), of(frames, own), ROUNDS).shared();
  }

  /** Every frame's own parameters behind another lens. */
  private List<double[]> behind(SceneFit rival, OwnExpectations expected, List<double[]> own) {
    List<double[]> behind = new ArrayList<>();
    for (int frame = 0; frame < own.size(); frame++) {
      Prior prior = expected.of(frame);
      behind.add(OwnFit.of(models.get(frame), rival.shared(), prior, own.get(frame)).own());
    }
    return behind;
  }

  /** Some of them, evenly. */
  private static List<Integer> spread(List<Integer> frames) {
    int count = Math.min(MOST_ASKED, frames.size());
    List<Integer> some = new ArrayList<>();
    for (int k = 0; k < count; k++) {
      some.add(frames.get((int) ((k + 0.5) * frames.size() / count)));
    }
    return some;
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
    for (int k = FrameModel.TILT_RIGHT; k <= FrameModel.CURVATURE; k++) {
      shared.expect(k, 0, usualDiscPx);
    }
    // Half of the difference widens as much as as large a curvature.
    shared.expect(FrameModel.ASTIGMATISM, 0, 2 * usualDiscPx);
    shared.expect(FrameModel.COMA, 0, USUAL_COMA_PX2);
    core.usualPx2()
        .ifPresent(px2 -> shared.expect(FrameModel.CORE, px2, core.errorPx2() / Math.sqrt(misfit)));
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
