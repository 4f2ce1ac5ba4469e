package rondure.stars;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import rondure.base.Moments;
import rondure.base.PixelPlane;

/** A plain threshold finder for tests: connected pixels above a limit, no deblending. */
final class RoughFinding {
  private RoughFinding() {}

  /** Finds sources in a canvas exposed with a flat sky. */
  static Found find(PixelPlane plane, StarCanvas.Exposure exposure) {
    return find(plane, StarCanvas.flat(exposure), Math.max(1e-3, exposure.noise()) * 2.5);
  }

  static Found find(PixelPlane plane, Background background, double threshold) {
    List<Candidate> candidates = new ArrayList<>();
    boolean[] seen = new boolean[plane.widthPx() * plane.heightPx()];
    for (int i = 0; i < seen.length; i++) {
      if (!seen[i] && above(plane, background, i, threshold)) {
        Candidate candidate = grow(plane, background, i, threshold, seen);
        if (candidate.filterSnr() > 5) {
          candidates.add(candidate);
        }
      }
    }
    candidates.sort(Comparator.comparingDouble(Candidate::fluxCounts).reversed());
    float level = background.levelAt(plane.widthPx() / 2, plane.heightPx() / 2);
    float noise = background.noiseAt(plane.widthPx() / 2, plane.heightPx() / 2);
    return new Found(
        background, allSky(plane), new SkyState(level, noise, level / 65535, 1, 0), candidates);
  }

  static SkyMask allSky(PixelPlane plane) {
    int columns = (plane.widthPx() + 63) / 64;
    int rows = (plane.heightPx() + 63) / 64;
    return new SkyMask(64, java.util.Collections.nCopies(rows, "1".repeat(columns)));
  }

  private static boolean above(PixelPlane plane, Background sky, int i, double threshold) {
    int x = i % plane.widthPx();
    int y = i / plane.widthPx();
    float value = plane.at(x, y);
    return !Float.isNaN(value) && value - sky.levelAt(x, y) > threshold;
  }

  private static Candidate grow(
      PixelPlane plane, Background sky, int first, double threshold, boolean[] seen) {
    Deque<Integer> open = new ArrayDeque<>(List.of(first));
    seen[first] = true;
    int step = plane.lattice() == PixelPlane.Lattice.EVERY_PIXEL ? 1 : 2;
    double sum = 0;
    double sumX = 0;
    double sumY = 0;
    double sumXx = 0;
    double sumXy = 0;
    double sumYy = 0;
    int area = 0;
    double peak = 0;
    int peakAt = first;
    while (!open.isEmpty()) {
      int i = open.pop();
      int x = i % plane.widthPx();
      int y = i / plane.widthPx();
      double value = plane.at(x, y) - sky.levelAt(x, y);
      sum += value;
      sumX += value * x;
      sumY += value * y;
      sumXx += value * x * x;
      sumXy += value * x * y;
      sumYy += value * y * y;
      area++;
      if (value > peak) {
        peak = value;
        peakAt = i;
      }
      for (int dy = -step; dy <= step; dy++) {
        for (int dx = -step; dx <= step; dx++) {
          int nextX = x + dx;
          int nextY = y + dy;
          boolean inside =
              nextX >= 0 && nextY >= 0 && nextX < plane.widthPx() && nextY < plane.heightPx();
          int next = nextY * plane.widthPx() + nextX;
          if (inside
              && Math.abs(dx) + Math.abs(dy) <= 2
              && !seen[next]
              && above(plane, sky, next, threshold)) {
            seen[next] = true;
            open.push(next);
          }
        }
      }
    }
    double x = sumX / sum;
    double y = sumY / sum;
    Moments moments = new Moments(sumXx / sum - x * x, sumXy / sum - x * y, sumYy / sum - y * y);
    int factor = plane.lattice() == PixelPlane.Lattice.EVERY_PIXEL ? 1 : 2;
    double noise = sky.noiseAt(peakAt % plane.widthPx(), peakAt / plane.widthPx());
    return new Candidate(
        x,
        y,
        peakAt % plane.widthPx(),
        peakAt / plane.widthPx(),
        peak,
        sum * factor,
        sum / (noise * Math.sqrt(area)),
        moments,
        Optional.empty());
  }
}
