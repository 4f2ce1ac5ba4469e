package rondure.blur;

import java.util.List;
import rondure.base.RobustStats;

/**
 * A uniform spin-2 that nearly all frames of a scene share: a decentred lens makes it, and it must
 * not be taken for a shake of each.
 *
 * @param alongPx2 (Mxx - Myy)/2
 * @param diagonalPx2 Mxy
 */
record CommonSmear(double alongPx2, double diagonalPx2) {
  private static final CommonSmear NONE = new CommonSmear(0, 0);
  private static final int LEAST_FRAMES = 5;

  /** Wind that blows all night long may be steady, but is seldom so weak and never so even. */
  private static final double MOST_PX2 = 0.25;

  private static final double EVEN_WITHIN_PX2 = 0.04;
  private static final double EVEN_SHARE = 0.75;

  /** Of all frames' own parameters; none where they differ. */
  static CommonSmear of(List<double[]> own) {
    double along = median(own, FrameModel.ALONG);
    double diagonal = median(own, FrameModel.DIAGONAL);
    long even =
        own.stream()
            .filter(
                row ->
                    Math.hypot(row[FrameModel.ALONG] - along, row[FrameModel.DIAGONAL] - diagonal)
                        < EVEN_WITHIN_PX2)
            .count();
    boolean shared =
        own.size() >= LEAST_FRAMES
            && even >= EVEN_SHARE * own.size()
            && Math.hypot(along, diagonal) <= MOST_PX2;
    return shared ? new CommonSmear(along, diagonal) : NONE;
  }

  private static double median(List<double[]> own, int parameter) {
    return RobustStats.median(own.stream().mapToDouble(row -> row[parameter]).toArray());
  }

  /** What a frame has beyond it. */
  double beyondPx2(double[] own) {
    return Math.hypot(own[FrameModel.ALONG] - alongPx2, own[FrameModel.DIAGONAL] - diagonalPx2);
  }
}
