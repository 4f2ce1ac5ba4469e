package rondure.sim;

import java.util.ArrayList;
import java.util.List;

/**
 * The smallest image of a star, as a sum of round Gaussians.
 *
 * <p>A Moffat profile is an exact mixture of Gaussians, (1 + r²/α²)^-β = 1/Γ(β) ∫ s^(β-1) e^-s
 * e^(-s r²/α²) ds, the scale mixture behind Student's t distribution; it is summed over a
 * logarithmic grid of s. FWHM = 2 α √(2^(1/β) - 1) (Moffat 1969, A&amp;A 3, 455).
 */
final class StarCore {
  /** One Gaussian: its share of the light and its variance per axis. */
  record Part(double share, double variancePx2) {}

  private static final double FWHM_PER_SIGMA = 2 * Math.sqrt(2 * Math.log(2));

  private StarCore() {}

  static List<Part> gaussian(double fwhmPx) {
    double sigma = fwhmPx / FWHM_PER_SIGMA;
    return List.of(new Part(1, sigma * sigma));
  }

  static List<Part> moffat(double fwhmPx, double beta) {
    double alpha = fwhmPx / (2 * Math.sqrt(Math.pow(2, 1 / beta) - 1));
    int nodes = 14;
    double lowest = Math.log(0.05);
    double step = (Math.log(12 + beta) - lowest) / (nodes - 1);
    double total = 0;
    double[] shares = new double[nodes];
    for (int i = 0; i < nodes; i++) {
      double s = Math.exp(lowest + i * step);
      shares[i] = Math.pow(s, beta - 1) * Math.exp(-s);
      total += shares[i];
    }
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < nodes; i++) {
      double s = Math.exp(lowest + i * step);
      if (shares[i] / total > 1e-4) {
        parts.add(new Part(shares[i] / total, alpha * alpha / (2 * s)));
      }
    }
    return parts;
  }

  static List<Part> of(LensPlan lens) {
    return lens.moffatBeta() == 0
        ? gaussian(lens.coreFwhmPx())
        : moffat(lens.coreFwhmPx(), lens.moffatBeta());
  }

  /** The core with part of its light spread into a round halo. */
  static List<Part> withHalo(List<Part> core, double haloShare, double haloFwhmPx) {
    List<Part> parts = new ArrayList<>();
    double sigma = haloFwhmPx / FWHM_PER_SIGMA;
    for (Part part : core) {
      parts.add(new Part(part.share() * (1 - haloShare), part.variancePx2()));
    }
    parts.add(new Part(haloShare, sigma * sigma + variancePx2(core)));
    return parts;
  }

  /** Second moment per axis of the sum, px². */
  static double variancePx2(List<Part> parts) {
    return parts.stream().mapToDouble(p -> p.share() * p.variancePx2()).sum()
        / parts.stream().mapToDouble(Part::share).sum();
  }
}
