package rondure.blur;

import java.util.ArrayList;
import java.util.List;

/**
 * How much of the tensors' variation over frame and night a budget explains, by χ² over the medians
 * of zones: what is left beyond the measuring errors, over what the scene's best single round star
 * leaves beyond them. Measuring errors hold what a star's shape scatters from frame to frame.
 */
final class ExplainedShare {
  /** Variation that is less than this many standard deviations of χ² asks for no explanation. */
  private static final double CLEAR = 3;

  /** χ² of one frame: about zero, about the model, and the number and weights of its terms. */
  private static final class Sums {
    private double left;
    private double noise;
    private double squares;
    private double weight;
    private double rounds;
    private int terms;

    void add(Sums other) {
      left += other.left;
      noise += other.noise;
      squares += other.squares;
      weight += other.weight;
      rounds += other.rounds;
      terms += other.terms;
    }

    /** With a round star of this second moment as the thing to beat. */
    double share(double roundPx2) {
      double whole = squares - 2 * roundPx2 * rounds + roundPx2 * roundPx2 * weight;
      double spread = CLEAR * Math.sqrt(2.0 * terms);
      if (!(whole > noise + spread)) {
        return 1;
      }
      return Math.max(0, Math.min(1, 1 - Math.max(0, left - noise) / (whole - noise)));
    }
  }

  private final Sums[] frames;
  private final Sums scene = new Sums();
  private double leftSquarePx4;
  private int leftTerms;

  private ExplainedShare(int frames) {
    this.frames = new Sums[frames];
  }

  /** Of frames with what each model predicts for each of their stars. */
  static ExplainedShare of(List<FrameModel> models, List<double[]> predicted) {
    ExplainedShare share = new ExplainedShare(models.size());
    List<double[]> left = new ArrayList<>();
    for (int j = 0; j < models.size(); j++) {
      left.add(left(models.get(j).stars(), predicted.get(j)));
    }
    double[] added = RepeatNoise.variancesPx4(models, left);
    for (int j = 0; j < models.size(); j++) {
      share.frames[j] = share.sums(models.get(j).stars(), left.get(j), added);
      share.scene.add(share.frames[j]);
    }
    return share;
  }

  private static double[] left(FrameStars stars, double[] predicted) {
    double[] left = new double[predicted.length];
    for (int k = 0; k < left.length; k++) {
      left[k] = stars.seen[k] - predicted[k];
    }
    return left;
  }

  private static double[] with(double[] errors, double[] addedPx4) {
    double[] all = new double[errors.length];
    for (int k = 0; k < all.length; k++) {
      all[k] = Math.sqrt(errors[k] * errors[k] + addedPx4[k % 3]);
    }
    return all;
  }

  private Sums sums(FrameStars stars, double[] left, double[] addedPx4) {
    Sums sums = new Sums();
    double[] noises = with(stars.noise, addedPx4);
    double[] errors = with(stars.error, addedPx4);
    for (int[] zone : ZoneMedians.zones(stars)) {
      for (int part = 0; part < 3; part++) {
        double noise = ZoneMedians.medianError(noises, zone, part);
        double error = ZoneMedians.medianError(errors, zone, part);
        double weight = 1 / (error * error);
        double seen = ZoneMedians.median(stars.seen, zone, part);
        double off = ZoneMedians.median(left, zone, part);
        sums.left += weight * off * off;
        sums.noise += weight * noise * noise;
        sums.squares += weight * seen * seen;
        sums.weight += part == 0 ? weight : 0;
        sums.rounds += part == 0 ? weight * seen : 0;
        sums.terms++;
        double stated = ZoneMedians.medianError(stars.noise, zone, part);
        leftSquarePx4 += Math.max(0, off * off - stated * stated);
        leftTerms++;
      }
    }
    return sums;
  }

  private double roundPx2() {
    return scene.weight > 0 ? scene.rounds / scene.weight : 0;
  }

  /** Of the whole scene, 0 to 1; 1 where nothing varies. */
  double scene() {
    return scene.share(roundPx2());
  }

  /** Of one frame, 0 to 1; 1 where it is as the scene's round star. */
  double frame(int j) {
    return frames[j].share(roundPx2());
  }

  /** What the model leaves in the zones beyond stated errors, r.m.s. per component, px². */
  double misfitPx2() {
    return leftTerms == 0 ? 0 : Math.sqrt(leftSquarePx4 / leftTerms);
  }
}
