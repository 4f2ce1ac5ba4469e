package rondure.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import rondure.base.Moments;
import rondure.base.Stamp;
import rondure.blur.FieldShape;
import rondure.stars.AverageStar;
import rondure.stars.StarField;

/**
 * Average stars for star lists without pixels: Gaussians of the stars' median tensor, and noise.
 */
final class DrawnAverages {
  private static final int SIDE_PX = 65;
  private static final int SAMPLES_PER_PX = 4;
  private static final int STARS = 40;
  private static final double NOISE = 0.003;

  private DrawnAverages() {}

  static StarField added(StarField field, long seed) {
    SplittableRandom chance = new SplittableRandom(seed);
    Moments moments = FieldShape.of(field).moments();
    List<AverageStar> averages = new ArrayList<>();
    for (AverageStar.Zone zone : AverageStar.Zone.values()) {
      averages.add(new AverageStar(zone, STARS, SAMPLES_PER_PX, stamp(moments, chance)));
    }
    return new StarField(
        field.widthPx(),
        field.heightPx(),
        field.stars(),
        field.others(),
        field.refused(),
        field.sky(),
        field.mask(),
        averages,
        field.groundLights());
  }

  private static Stamp stamp(Moments m, SplittableRandom chance) {
    double determinant = m.xxPx2() * m.yyPx2() - m.xyPx2() * m.xyPx2();
    float[] values = new float[SIDE_PX * SIDE_PX];
    for (int i = 0; i < values.length; i++) {
      double x = (i % SIDE_PX - SIDE_PX / 2) / (double) SAMPLES_PER_PX;
      double y = (i / SIDE_PX - SIDE_PX / 2) / (double) SAMPLES_PER_PX;
      double square = m.yyPx2() * x * x - 2 * m.xyPx2() * x * y + m.xxPx2() * y * y;
      values[i] = (float) (Math.exp(-square / determinant / 2) + NOISE * chance.nextGaussian());
    }
    return new Stamp(SIDE_PX, values);
  }
}
