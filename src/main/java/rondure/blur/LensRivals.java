package rondure.blur;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * Lenses that widen stars about as much as a given one, in other ways.
 *
 * <p>About a sharp centre a curvature c and an astigmatism a add (c² + a²/4) r⁴ / 16 to the round
 * part of a star: only their products with the frame's disc and the tilt tell them apart. Coma adds
 * a third of itself, as r².
 */
final class LensRivals {
  private static final int TURNS = 8;

  /** Below this share of the core, in a corner, it does not matter which it is. */
  private static final double MATTERS = 0.5;

  /** Half of χ² by which a rival may be behind before it is settled, in units of the misfit. */
  private static final double NEAR = 10;

  private static final int MOST = 3;

  /** Booked alike: to so much of the focus booked, and of the core. */
  private static final double SAME_FOCUS = 0.1;

  private static final double SAME_CORE = 0.03;

  private LensRivals() {}

  /** Whether what the lens does in a corner is worth asking which of them it is. */
  static boolean matter(double[] shared) {
    double core = shared[FrameModel.CORE];
    return surfacePx2(shared) + shared[FrameModel.COMA] / 3 > MATTERS * core;
  }

  private static double surfacePx2(double[] shared) {
    double split = shared[FrameModel.ASTIGMATISM] / 2;
    double curvature = shared[FrameModel.CURVATURE];
    return (curvature * curvature + split * split) / 16;
  }

  /** Shared parameters to begin from: the same corner by other means. */
  static List<double[]> starts(double[] shared) {
    List<double[]> starts = new ArrayList<>();
    double corner = surfacePx2(shared);
    double coma = shared[FrameModel.COMA];
    double radius = 4 * Math.sqrt(corner + coma / 3);
    for (int turn = 0; turn < TURNS; turn++) {
      double angle = 2 * Math.PI * turn / TURNS;
      starts.add(with(shared, radius * Math.cos(angle), 2 * radius * Math.sin(angle), 0.2 * coma));
    }
    starts.add(comatic(shared));
    return starts;
  }

  /** Shared parameters to begin from: the same corner by coma alone. */
  static double[] comatic(double[] shared) {
    return with(shared, 0.3, 0.3, shared[FrameModel.COMA] + 3 * surfacePx2(shared));
  }

  private static double[] with(double[] shared, double curvature, double astigmatism, double coma) {
    double[] start = shared.clone();
    start[FrameModel.CURVATURE] = curvature;
    start[FrameModel.ASTIGMATISM] = astigmatism;
    start[FrameModel.COMA] = coma;
    return start;
  }

  /**
   * Those of some fits that are as good as the best to within what settling may gain, no two of
   * which book the same.
   *
   * @param fits of the same stars
   * @param known fits that need no settling, nor do those that book as they do
   */
  static List<SceneFit> worthSettling(List<SceneFit> fits, List<SceneFit> known, double misfit) {
    List<SceneFit> sorted = new ArrayList<>(fits);
    sorted.sort(Comparator.comparingDouble(SceneFit::loss));
    double limit = sorted.get(0).loss() + NEAR * misfit;
    List<SceneFit> worth = new ArrayList<>();
    for (SceneFit fit : sorted) {
      boolean other =
          Stream.concat(known.stream(), worth.stream()).noneMatch(one -> bookAlike(one, fit));
      if (other && fit.loss() <= limit && worth.size() < MOST) {
        worth.add(fit);
      }
    }
    return worth;
  }

  private static boolean bookAlike(SceneFit one, SceneFit other) {
    double core = one.shared()[FrameModel.CORE];
    double focus = focusPx2(one);
    double near = SAME_FOCUS * Math.max(focus, focusPx2(other)) + SAME_CORE * core;
    return Math.abs(focus - focusPx2(other)) < near
        && Math.abs(core - other.shared()[FrameModel.CORE]) < SAME_CORE * core;
  }

  private static double focusPx2(SceneFit fit) {
    double sum = 0;
    double[][] own = fit.allOwn();
    double thirdOfCurvature = fit.shared()[FrameModel.CURVATURE] * LensSurface.MEAN_SQUARE_RADIUS;
    for (double[] row : own) {
      double disc = row[FrameModel.DISC] + thirdOfCurvature;
      sum += disc * disc / 16 / own.length;
    }
    return sum;
  }
}
