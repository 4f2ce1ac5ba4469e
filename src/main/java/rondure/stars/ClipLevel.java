package rondure.stars;

import java.util.List;

/**
 * The level from which a star counts as saturated: 0.9 of the white level, or where a frame was
 * clipped lower (exports often are), the flat top that its brightest sources share.
 */
final class ClipLevel {
  private static final double SATURATED_SHARE = 0.9;
  private static final double SAME_TOP_SHARE = 0.998;
  private static final int PLATEAU_PX = 4;
  private static final int PLATEAU_SOURCES = 3;
  private static final int EQUAL_SOURCES = 4;

  /** Below this many code steps equal tops happen by chance. */
  private static final double FEWEST_STEPS = 60;

  private ClipLevel() {}

  /** The least stored value, sky included, that counts as saturated. */
  static double of(List<Source> sources, PixelContext context) {
    double nominal = SATURATED_SHARE * context.whiteLevelCounts();
    double top = sources.stream().mapToDouble(Source::peakValueCounts).max().orElse(0);
    double same = SAME_TOP_SHARE * top;
    long flat =
        sources.stream()
            .filter(source -> source.peakValueCounts() >= same)
            .filter(source -> source.plateauPx() >= PLATEAU_PX)
            .count();
    double step = CodeSteps.at(context, top);
    long equal =
        sources.stream()
            .filter(source -> top - source.peakValueCounts() <= Math.max(1e-6 * top, step / 2))
            .count();
    boolean clipped =
        flat >= PLATEAU_SOURCES || equal >= EQUAL_SOURCES && top >= FEWEST_STEPS * step;
    return clipped ? Math.min(nominal, same) : nominal;
  }
}
