package rondure.stars;

import java.util.ArrayList;
import java.util.List;

/** placeholder while features are being looked at. */
final class SkyRegion {
  static SkyMask find(BackgroundMesh b, List<Source> s, PixelContext c, int meshPx) {
    List<String> rows = new ArrayList<>();
    for (int row = 0; row < b.level().rows(); row++) {
      rows.add("1".repeat(b.level().columns()));
    }
    return new SkyMask(meshPx, rows);
  }

  static SkyState state(BackgroundMesh b, SkyMask mask, PixelContext c) {
    return new SkyState(0, 0, 0, 0, 0);
  }
}
