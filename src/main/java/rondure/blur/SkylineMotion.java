package rondure.blur;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rondure.sky.Camera;
import rondure.sky.Direction;
import rondure.sky.FrameSky;
import rondure.sky.Rotation;
import rondure.stars.SkyMask;

/**
 * How much of the stars' motion over a scene its skyline shares: nothing where the sky turns over a
 * camera that stands, most of it where the camera gives way.
 *
 * <p>Skylines are known to mesh cells only, but along their whole length: with M̄ the mean of the
 * frames' masks (1 sky, 0 ground) and δ a frame's motion, M − M̄ = −s ∇M̄ · δ is solved for s by
 * least squares over all cells and frames.
 *
 * @param share of the motion
 * @param error standard error of the share
 */
record SkylineMotion(double share, double error) {
  private static final int LEAST_FRAMES = 3;

  /** What twilight, lamps and haze move the found skyline by over a scene, mesh cells. */
  static final double DRIFT_CELLS = 0.25;

  /** An end of the aim more than 60° off is no small motion any more. */
  private static final double LEAST_AHEAD = 0.5;

  /** A skyline that moved so little along its normal tells nothing, mesh cells. */
  private static final double LEAST_RANGE_CELLS = 0.2;

  /** A shorter one may be a tree or a hole in the sky found, mesh cells. */
  private static final double LEAST_LENGTH_CELLS = 5;

  /** Shares of a motion that is more the camera's than the sky's. */
  private static final double[] CAMERAS_SHARES = {0.55, 0.7, 0.85, 1};

  /** So often what was found is no skyline, or one of passing cloud. */
  private static final double ODD_ONES = 0.05;

  /** R.m.s. of an even sweep over its range. */
  private static final double RMS_OF_RANGE = 1 / Math.sqrt(12);

  /** A frame's mask and how far its stars stand from their mean place, mesh cells. */
  private record Shown(SkyMask mask, double right, double down) {}

  /** Empty where no skyline is seen, or it moves along itself. */
  static Optional<SkylineMotion> of(SceneEvidence scene) {
    List<Shown> shown = centred(shown(scene));
    if (shown.size() < LEAST_FRAMES) {
      return Optional.empty();
    }
    Grid grid = new Grid(shown);
    double[] all = grid.sums(shown);
    double range = Math.sqrt(all[1] / Math.max(1e-9, all[2])) / RMS_OF_RANGE;
    if (!(grid.length() >= LEAST_LENGTH_CELLS && range > LEAST_RANGE_CELLS)) {
      return Optional.empty();
    }
    double share = all[0] / all[1];
    double error = Math.hypot(jackknife(grid, shown, all), DRIFT_CELLS / range);
    return Optional.of(new SkylineMotion(share, error));
  }

  /** Of a camera that stood under a turning sky against one that gave way. */
  double standingLogOdds() {
    double camera = 0;
    for (double other : CAMERAS_SHARES) {
      camera += likelihood(share - other) / CAMERAS_SHARES.length;
    }
    return Math.log((likelihood(share) + ODD_ONES) / (camera + ODD_ONES));
  }

  private double likelihood(double off) {
    return Math.exp(-off * off / (2 * error * error));
  }

  /** Standard error by leaving out each frame in turn (Tukey's jackknife). */
  private static double jackknife(Grid grid, List<Shown> shown, double[] all) {
    double sum = 0;
    for (Shown one : shown) {
      double[] own = grid.sums(List.of(one));
      double without = (all[0] - own[0]) / Math.max(1e-9, all[1] - own[1]);
      sum += Math.pow(without - all[0] / all[1], 2);
    }
    return Math.sqrt(sum * (shown.size() - 1) / shown.size());
  }

  private static List<Shown> shown(SceneEvidence scene) {
    List<Shown> shown = new ArrayList<>();
    Optional<Camera> camera = scene.sky().camera();
    Optional<Direction> aim = Optional.empty();
    for (int i = 0; i < scene.frames().size() && camera.isPresent(); i++) {
      FrameSky sky = scene.sky().frames().get(scene.places().get(i));
      if (sky.attitude().isEmpty()) {
        continue;
      }
      Rotation attitude = sky.attitude().get();
      Direction first = aim.orElse(attitude.inverse().apply(Direction.of(0, 0, 1)));
      aim = Optional.of(first);
      Direction now = attitude.apply(first);
      SkyMask mask = scene.frames().get(i).field().mask();
      double cells = camera.get().focalLengthPx() / mask.meshPx() / Math.max(LEAST_AHEAD, now.z());
      shown.add(new Shown(mask, cells * now.x(), cells * now.y()));
    }
    return shown;
  }

  private static List<Shown> centred(List<Shown> shown) {
    double right = shown.stream().mapToDouble(Shown::right).average().orElse(0);
    double down = shown.stream().mapToDouble(Shown::down).average().orElse(0);
    return shown.stream()
        .map(s -> new Shown(s.mask(), s.right() - right, s.down() - down))
        .toList();
  }

  /** The mean mask of all frames and its slopes, cells at the frame's rim left out. */
  private static final class Grid {
    private final int columns;
    private final int rows;
    private final double[] mean;

    Grid(List<Shown> shown) {
      rows = shown.get(0).mask().rows().size();
      columns = shown.get(0).mask().rows().get(0).length();
      mean = new double[rows * columns];
      for (Shown one : shown) {
        for (int i = 0; i < mean.length; i++) {
          mean[i] += value(one.mask(), i) / shown.size();
        }
      }
    }

    private double value(SkyMask mask, int cell) {
      return mask.isSkyCell(cell % columns, cell / columns) ? 1 : 0;
    }

    /** Of the mean skyline. */
    double length() {
      double length = 0;
      for (int row = 1; row < rows - 1; row++) {
        for (int column = 1; column < columns - 1; column++) {
          int cell = row * columns + column;
          length += Math.hypot(right(cell), down(cell));
        }
      }
      return length;
    }

    private double right(int cell) {
      return (mean[cell + 1] - mean[cell - 1]) / 2;
    }

    private double down(int cell) {
      return (mean[cell + columns] - mean[cell - columns]) / 2;
    }

    /** Foretold times seen, foretold squared, and slope squared, over all cells of some frames. */
    double[] sums(List<Shown> shown) {
      double[] sums = new double[3];
      for (Shown one : shown) {
        for (int row = 1; row < rows - 1; row++) {
          for (int column = 1; column < columns - 1; column++) {
            add(one, row * columns + column, sums);
          }
        }
      }
      return sums;
    }

    private void add(Shown one, int cell, double[] sums) {
      double right = right(cell);
      double down = down(cell);
      double foretold = -right * one.right() - down * one.down();
      sums[0] += foretold * (value(one.mask(), cell) - mean[cell]);
      sums[1] += foretold * foretold;
      sums[2] += right * right + down * down;
    }
  }
}
