package rondure.blur;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Errors of a scene's terms by drawing blocks of the field with replacement (Efron &amp; Tibshirani
 * 1993, An Introduction to the Bootstrap, from memory): stars near each other share what a lens
 * model misses, so that single stars are no independent draws.
 *
 * <p>Each draw is one Gauss-Newton step from the solution with the blocks' normal equations; the
 * expectations are drawn anew as well. The same draw is used for all frames.
 */
final class BlockBootstrap {
  private static final int DRAWS = 40;
  private static final int CELLS_ALONG = 6;
  private static final int CELLS_ACROSS = 4;
  private static final int BLOCKS = CELLS_ALONG * CELLS_ACROSS;
  private static final long SEED = 20_250_101L;

  /** A step so small that terms answer in proportion. */
  private static final double SMALL = 0.02;

  private final SceneSolution solution;
  private final int[][] times = new int[DRAWS][BLOCKS];
  private final double[][] sharedSteps = new double[DRAWS][];

  BlockBootstrap(SceneSolution solution) {
    this.solution = solution;
    SplittableRandom chance = new SplittableRandom(SEED);
    for (int[] draw : times) {
      for (int k = 0; k < BLOCKS; k++) {
        draw[chance.nextInt(BLOCKS)]++;
      }
    }
    drawShared();
  }

  private void drawShared() {
    List<Integer> together = solution.together();
    List<FrameNormals[]> blocks = new ArrayList<>();
    together.forEach(frame -> blocks.add(blocks(frame)));
    for (int draw = 0; draw < DRAWS; draw++) {
      ArrowSystem system = new ArrowSystem(solution.sharedPrior(), solution.shared(), 0);
      for (int k = 0; k < together.size(); k++) {
        int frame = together.get(k);
        FrameNormals drawn = drawn(blocks.get(k), frame, draw);
        system.add(drawn.matrix, drawn.pull, solution.ownPrior(frame), solution.own(frame));
      }
      sharedSteps[draw] = system.sharedStep();
    }
  }

  private FrameNormals[] blocks(int frame) {
    FrameModel model = solution.models().get(frame);
    int[] blockOf = model.stars().cells(CELLS_ALONG, CELLS_ACROSS);
    return FrameNormals.ofBlocks(model, solution.shared(), solution.own(frame), blockOf, BLOCKS);
  }

  /** A draw's blocks of a frame, and what is expected of its own parameters drawn anew. */
  private FrameNormals drawn(FrameNormals[] blocks, int frame, int draw) {
    FrameNormals drawn = FrameNormals.resampled(blocks, times[draw]);
    Prior prior = solution.ownPrior(frame);
    double[] own = solution.own(frame);
    SplittableRandom chance = new SplittableRandom(SEED + 7919L * frame + 104_729L * draw);
    for (int k = 0; k < FrameModel.OWN; k++) {
      double spread = Math.sqrt(prior.precision(k, own[k]));
      drawn.pull[FrameModel.SHARED + k] += spread * chance.nextGaussian();
    }
    return drawn;
  }

  /** Steps of the shared parameters, one row for each draw; a copy. */
  double[][] sharedSteps() {
    return Arrays.stream(sharedSteps).map(double[]::clone).toArray(double[][]::new);
  }

  /** Standard errors of a frame's terms. */
  Terms errors(int frame) {
    FrameModel model = solution.models().get(frame);
    FrameNormals[] blocks = blocks(frame);
    double[] shared = solution.shared();
    double[] own = solution.own(frame);
    Prior prior = solution.ownPrior(frame);
    double[] at = values(shared, new Booking(model, shared, own));
    double[][] moved = new double[DRAWS][];
    for (int draw = 0; draw < DRAWS; draw++) {
      FrameNormals drawn = drawn(blocks, frame, draw);
      double[] ownStep =
          new ArrowFrame(drawn.matrix, drawn.pull, prior, own, 0).step(sharedSteps[draw]);
      double[] there = stepped(shared, sharedSteps[draw]);
      moved[draw] = values(there, new Booking(model, there, stepped(own, ownStep)));
    }
    return terms(at, moved);
  }

  private static double[] stepped(double[] from, double[] step) {
    double[] moved = from.clone();
    for (int k = 0; k < moved.length; k++) {
      moved[k] += SMALL * step[k];
    }
    return moved;
  }

  /** Core, focus, tripod, lens: the sky's own motion is the same in every draw. */
  private static double[] values(double[] shared, Booking booking) {
    return new double[] {
      shared[FrameModel.CORE], booking.focusPx2(), booking.tripodPx2(), booking.lensPx2()
    };
  }

  private static Terms terms(double[] at, double[][] moved) {
    double[] errors = new double[at.length];
    for (int term = 0; term < at.length; term++) {
      double sum = 0;
      for (double[] draw : moved) {
        double off = (draw[term] - at[term]) / SMALL;
        sum += off * off;
      }
      errors[term] = Math.sqrt(sum / moved.length);
    }
    return new Terms(errors[0], errors[1], 0, errors[2], errors[3], 0, 0);
  }
}
