package rondure.stars;

import java.util.ArrayList;
import java.util.List;
import rondure.base.Moments;

/**
 * The profiles that are tried on stars, and which are alike.
 *
 * <p>Ordered by how flat they are: nine Moffat profiles (long wings), the Gaussian, discs that blur
 * more and more than the core does; then rings; then trails of cores with more and more wings.
 * Steps are so fine that a star between two of them is measured within 2 % in width by either.
 */
final class ShapeFamilies {
  private static final double[] MOFFAT_BETAS = {1.5, 1.75, 2, 2.3, 2.6, 3, 3.5, 4.3, 6};
  private static final double[] DISC_SHARES = {
    0.28, 0.4, 0.55, 0.67, 0.77, 0.85, 0.91, 0.95, 0.975
  };
  private static final double[] RING_SHARES = {0.77, 0.85, 0.91, 0.95, 0.975};

  /** Inner over outer diameter of the rings: between a bright rim and a mirror lens. */
  private static final double RING_HOLE = 0.4;

  /**
   * Below this variance across (FWHM 1.8 px) models are averaged over each pixel. Above it one at
   * the pixel's centre has the half-maximum width right within 2 %; at FWHM 1.3 px it is 3 to 6 %
   * off.
   */
  private static final double SHARP_PX2 = 0.6;

  private static final List<Profile> ALL = new ArrayList<>();
  private static final List<Profile> AVERAGED;
  private static final List<List<Integer>> ALIKE = new ArrayList<>();

  /** Index of the Gaussian. */
  static final int GAUSSIAN = MOFFAT_BETAS.length;

  /** Index of the trail of Gaussian cores. */
  static final int TRAIL;

  static {
    for (double beta : MOFFAT_BETAS) {
      ALL.add(EllipticalProfile.moffat(beta));
    }
    ALL.add(EllipticalProfile.gaussian());
    for (double share : DISC_SHARES) {
      ALL.add(EllipticalProfile.disc(share, 0));
    }
    int firstRing = ALL.size();
    for (double share : RING_SHARES) {
      ALL.add(EllipticalProfile.disc(share, RING_HOLE));
    }
    TRAIL = ALL.size();
    ALL.add(TrailProfile.gaussian());
    ALL.add(TrailProfile.faintWings());
    ALL.add(TrailProfile.wings());
    ALL.add(TrailProfile.strongWings());
    AVERAGED = ALL.stream().<Profile>map(PixelAveraged::new).toList();
    for (int i = 0; i < ALL.size(); i++) {
      ALIKE.add(new ArrayList<>());
    }
    joinAll(firstRing);
  }

  private ShapeFamilies() {}

  private static void joinAll(int firstRing) {
    for (int i = 0; i + 1 < ALL.size(); i++) {
      if (i + 1 != firstRing && i + 1 != TRAIL) {
        join(i, i + 1);
      }
    }
    for (int i = 0; i < RING_SHARES.length; i++) {
      join(firstRing + i, firstRing - RING_SHARES.length + i);
    }
    join(GAUSSIAN - 1, TRAIL + 1);
    join(GAUSSIAN - 2, TRAIL + 1);
    join(GAUSSIAN - 3, TRAIL + 2);
    join(GAUSSIAN - 4, TRAIL + 2);
    join(GAUSSIAN - 5, TRAIL + 3);
    join(GAUSSIAN - 6, TRAIL + 3);
    join(GAUSSIAN, TRAIL);
    join(GAUSSIAN + 3, TRAIL);
  }

  private static void join(int first, int second) {
    ALIKE.get(first).add(second);
    ALIKE.get(second).add(first);
  }

  static int count() {
    return ALL.size();
  }

  /** A profile sampled at the pixels' centres. */
  static Profile profile(int index) {
    return ALL.get(index);
  }

  /**
   * The profile as stars of this size need it: averaged over each pixel when they are sharp.
   *
   * @param rough about the moments that it will take
   */
  static Profile profile(int index, Moments rough) {
    return rough.minorPx2() < SHARP_PX2 ? AVERAGED.get(index) : ALL.get(index);
  }

  /** The profiles next to one, to climb along. */
  static List<Integer> alike(int index) {
    return ALIKE.get(index);
  }
}
