package rondure.night;

import java.util.Objects;

/**
 * Limits of the grades. Widths are held against the 10th percentile of the scene's widths, the best
 * that this lens did tonight; all are common practice.
 *
 * @param keepWidthRatio [1.25] widest frame to keep
 * @param keepRoundness [0.8] least roundness b/a to keep
 * @param asideWidthRatio [1.6] wider frames are set aside
 * @param asideRoundness [0.6] less round frames are set aside
 * @param uses what a frame must serve for
 */
public record GradeSettings(
    double keepWidthRatio,
    double keepRoundness,
    double asideWidthRatio,
    double asideRoundness,
    UseSettings uses) {
  public GradeSettings {
    Objects.requireNonNull(uses, "uses");
    require("keepWidthRatio", keepWidthRatio >= 1, ">= 1", keepWidthRatio);
    require("keepRoundness", keepRoundness >= 0 && keepRoundness <= 1, "in [0, 1]", keepRoundness);
    require(
        "asideWidthRatio",
        asideWidthRatio >= keepWidthRatio,
        ">= keepWidthRatio, which is " + keepWidthRatio,
        asideWidthRatio);
    require(
        "asideRoundness",
        asideRoundness >= 0 && asideRoundness <= keepRoundness,
        "in [0, keepRoundness], which is " + keepRoundness,
        asideRoundness);
  }

  public static GradeSettings defaults() {
    return new GradeSettings(1.25, 0.8, 1.6, 0.6, UseSettings.defaults());
  }

  private static void require(String name, boolean holds, String what, double value) {
    if (!holds) {
      throw new IllegalArgumentException(name + " must be " + what + ", was " + value);
    }
  }
}
