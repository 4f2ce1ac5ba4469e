package rondure.blur;

import java.util.Arrays;
import java.util.stream.DoubleStream;

/**
 * Looks for a round halo about an average star. The core is a Gaussian or a Moffat profile whose
 * half-maximum width may be a little off, the halo a Gaussian of a few widths; heights follow by
 * least squares ({@link HaloModel}). Every such model counts with its likelihood and with how usual
 * its wings are, so that what a lens may do by itself makes the halo uncertain and not likely.
 */
final class HaloFit {
  /** Cores from a Gaussian's (0) to the longest wings of lenses. */
  private static final double[] INVERSE_BETAS = {
    0, 1 / 9.0, 1 / 6.0, 1 / 4.7, 1 / 4.0, 1 / 3.5, 1 / 3.0, 1 / 2.75, 1 / 2.5
  };

  /** How usual they are: most lenses' cores have β of 3 to 6 or no wings (common practice). */
  private static final double[] USUAL = {1, 1, 1, 1, 1, 0.8, 0.5, 0.25, 0.12};

  /** Half-maximum width of the core over that of the stars' models, and its scatter. */
  private static final double[] WIDTHS = {0.85, 0.9, 0.95, 1, 1.05, 1.1, 1.15};

  private static final double WIDTH_SPREAD = 0.08;

  /** σ of the halo over the half-maximum width: FWHM of 2 to 7 times the star's. */
  private static final double[] SIGMAS = {0.85, 1.15, 1.55, 2.1, 2.8};

  /** And of those that only rings beyond the average star show. */
  private static final double[] WIDE_SIGMAS = {3.8, 5, 6.8};

  /** Shares that a halo may have before anything is measured: even from 0 to this. */
  static final double MOST_SHARE = 0.5;

  private static final double FWHM_PER_SIGMA = 2 * Math.sqrt(2 * Math.log(2));

  /** Numbers that a model is free to choose. */
  private static final int FREE = 4;

  private final HaloRings rings;
  private final HaloAround around;
  private final double[] sigmas;
  private final double elongation;
  private final HaloModel.Solved[] solved;
  private double scale;
  private double withHalo;
  private double without;
  private double share;
  private double shareSquared;
  private double square;
  private double squareSquared;

  /**
   * @param elongation half-maximum length over width: drawn-out cores hold as much more light
   */
  HaloFit(HaloRings rings, HaloGround ground, HaloAround around, double elongation) {
    this.rings = rings;
    this.around = around;
    this.sigmas =
        DoubleStream.concat(
                Arrays.stream(SIGMAS), Arrays.stream(WIDE_SIGMAS).filter(around::reaches))
            .toArray();
    this.elongation = elongation;
    this.solved = solved(new HaloModel(rings, ground, around, elongation));
  }

  /**
   * What the models say together.
   *
   * @param share of the light in the halo, if there is one
   * @param square its second moment times that share, in half-maximum widths squared
   * @param logEvidence logarithm of the likelihood with a halo over that without
   */
  record Found(
      double share, double shareError, double square, double squareError, double logEvidence) {}

  /** For each core first without a halo, then with each. */
  private HaloModel.Solved[] solved(HaloModel model) {
    HaloModel.Shape[] halos = new HaloModel.Shape[sigmas.length + 1];
    halos[0] = new HaloModel.Shape(new double[rings.size()], new double[around.size()], 0, 0, 0);
    for (int s = 0; s < sigmas.length; s++) {
      halos[s + 1] = shape(0, sigmas[s] * FWHM_PER_SIGMA);
    }
    int count = 0;
    HaloModel.Solved[] all =
        new HaloModel.Solved[INVERSE_BETAS.length * WIDTHS.length * halos.length];
    for (double inverseBeta : INVERSE_BETAS) {
      for (double width : WIDTHS) {
        HaloModel.Shape core = shape(inverseBeta, width);
        for (HaloModel.Shape halo : halos) {
          all[count++] = model.solve(core, halo);
        }
      }
    }
    return all;
  }

  private HaloModel.Shape shape(double inverseBeta, double width) {
    double[] light = new double[rings.size()];
    for (int i = 0; i < light.length; i++) {
      light[i] = core(rings.square(i) / (width * width), inverseBeta);
    }
    double narrow = inside(HaloGround.NARROW / width, inverseBeta);
    double wide = inside(HaloGround.WIDE / width, inverseBeta);
    return new HaloModel.Shape(
        light,
        around.shown(inverseBeta, width),
        lightOfCore(inverseBeta, width),
        narrow,
        wide - narrow);
  }

  /** Share of a core's light within a radius in its half-maximum widths: 1 - (1 + r²/α²)^(1-β). */
  static double inside(double radius, double inverseBeta) {
    double at = core(radius * radius, inverseBeta);
    return inverseBeta == 0 ? 1 - at : 1 - Math.pow(at, 1 - inverseBeta);
  }

  /** χ² of the best model over its freedom. */
  double misfit() {
    double best = Double.POSITIVE_INFINITY;
    for (HaloModel.Solved one : solved) {
      best = Math.min(best, one.misfit());
    }
    return best / freedom();
  }

  private int freedom() {
    return Math.max(1, rings.size() + around.size() - FREE);
  }

  Found found() {
    double best = misfit() * freedom();
    // Where no model fits, rings are less certain than their noise says.
    scale = 1 / Math.max(1, best / freedom());
    int at = 0;
    for (int b = 0; b < INVERSE_BETAS.length; b++) {
      for (double width : WIDTHS) {
        double off = (width - 1) / WIDTH_SPREAD;
        double usual = USUAL[b] * Math.exp(scale * best / 2 - off * off / 2);
        without += usual * Math.exp(-scale * solved[at++].misfit() / 2);
        double coreLight = lightOfCore(INVERSE_BETAS[b], width) * elongation;
        for (double sigma : sigmas) {
          count(solved[at++], coreLight, sigma, usual / sigmas.length);
        }
      }
    }
    return told();
  }

  /** Adds a model with what it says of shares from 0 to the most: a normal law cut off there. */
  private void count(HaloModel.Solved one, double coreLight, double sigma, double usual) {
    double core = one.core() * coreLight;
    double perHeight = 2 * Math.PI * sigma * sigma;
    double all = Math.max(0.5 * core, core + one.halo() * perHeight);
    double own = one.halo() * perHeight / all;
    double error = one.haloError() * perHeight * core / (all * all) / Math.sqrt(scale);
    CutNormal law = CutNormal.of(own, error, MOST_SHARE);
    double weight =
        usual
            * Math.exp(-scale * one.misfit() / 2)
            * (error * Math.sqrt(2 * Math.PI) / MOST_SHARE)
            * law.inside();
    withHalo += weight;
    share += weight * law.mean();
    shareSquared += weight * law.meanSquare();
    square += weight * law.mean() * sigma * sigma;
    squareSquared += weight * law.meanSquare() * Math.pow(sigma, 4);
  }

  private Found told() {
    double sum = Math.max(Double.MIN_NORMAL, withHalo);
    double mean = share / sum;
    double meanSquare = square / sum;
    return new Found(
        mean,
        Math.sqrt(Math.max(0, shareSquared / sum - mean * mean)),
        meanSquare,
        Math.sqrt(Math.max(0, squareSquared / sum - meanSquare * meanSquare)),
        Math.log(sum) - Math.log(Math.max(Double.MIN_NORMAL, without)));
  }

  /** Light at the square of a radius in half-maximum widths; 1 at the centre (Moffat 1969). */
  static double core(double square, double inverseBeta) {
    return inverseBeta == 0
        ? Math.exp(-4 * Math.log(2) * square)
        : Math.pow(1 + 4 * (Math.pow(2, inverseBeta) - 1) * square, -1 / inverseBeta);
  }

  /** All the light of a core of height 1: 2π σ², or π α² / (β - 1). */
  static double lightOfCore(double inverseBeta, double width) {
    if (inverseBeta == 0) {
      double sigma = width / FWHM_PER_SIGMA;
      return 2 * Math.PI * sigma * sigma;
    }
    double alpha = width / (2 * Math.sqrt(Math.pow(2, inverseBeta) - 1));
    return Math.PI * alpha * alpha / (1 / inverseBeta - 1);
  }
}
