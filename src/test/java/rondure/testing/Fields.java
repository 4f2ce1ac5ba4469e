package rondure.testing;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import rondure.base.Moments;
import rondure.stars.Detection;
import rondure.stars.Refusal;
import rondure.stars.SkyMask;
import rondure.stars.SkyState;
import rondure.stars.Star;
import rondure.stars.StarField;

/** Star fields made from positions and tensors, for tests. */
public final class Fields {
  private Fields() {}

  /** A Gaussian star: half-maximum widths follow from the tensor. */
  public static Star star(double x, double y, Moments moments, double errorPx2) {
    return new Star(
        x,
        y,
        10_000,
        2.83 * moments.meanPx2() / Math.max(errorPx2, 1e-3),
        moments,
        errorPx2,
        errorPx2 / Math.sqrt(2),
        errorPx2,
        Moments.FWHM_PER_SIGMA * Math.sqrt(Math.max(0.05, moments.majorPx2())),
        Moments.FWHM_PER_SIGMA * Math.sqrt(Math.max(0.05, moments.minorPx2())),
        0,
        0,
        1.2,
        0.3);
  }

  public static StarField field(int width, int height, List<Star> stars, List<Detection> others) {
    Map<Refusal, Integer> refused = new EnumMap<>(Refusal.class);
    others.forEach(other -> refused.merge(other.reason(), 1, Integer::sum));
    return field(width, height, stars, others, refused, new SkyState(1000, 30, 0.05, 1, 0));
  }

  public static StarField field(
      int width,
      int height,
      List<Star> stars,
      List<Detection> others,
      Map<Refusal, Integer> refused,
      SkyState sky) {
    List<String> rows = new ArrayList<>();
    for (int row = 0; row * 64 < height; row++) {
      rows.add("1".repeat((width + 63) / 64));
    }
    return new StarField(
        width, height, stars, others, refused, sky, new SkyMask(64, rows), List.of(), List.of());
  }
}
