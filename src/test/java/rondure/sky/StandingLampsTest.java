package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rondure.stars.SkyMask;
import rondure.stars.StarField;
import rondure.testing.Fields;

/** What stays below the skyline while the stars move, and is no hot pixel, is a lamp. */
class StandingLampsTest {
  private static final int FRAMES = 6;

  /** Sky in the upper half of 18 x 12 cells of 64 px. */
  private static StarField halfLand() {
    StarField field = Fields.field(1152, 768, List.of(), List.of());
    List<String> rows = new ArrayList<>(Collections.nCopies(6, "1".repeat(18)));
    rows.addAll(Collections.nCopies(6, "0".repeat(18)));
    return new StarField(
        1152,
        768,
        List.of(),
        List.of(),
        Map.of(),
        field.sky(),
        new SkyMask(64, rows),
        List.of(),
        List.of());
  }

  private static StaticSpot spot(double yPx, StaticSpot.Kind kind, int seen) {
    return new StaticSpot(300 + 40 * seen, yPx, kind, 0, seen - 1, seen, Optional.empty());
  }

  private static int count(StaticReport.Finding finding, StaticSpot... spots) {
    return StandingLamps.count(
        new StaticReport(
            finding,
            Collections.nCopies(FRAMES, halfLand()),
            Collections.nCopies(FRAMES, 0),
            List.of(spots)));
  }

  @Test
  void lampsOnTheGroundAndAtTheSkylineCount() {
    StaticSpot low = spot(600, StaticSpot.Kind.GROUND_LIGHT, FRAMES);
    StaticSpot skyline = spot(350, StaticSpot.Kind.GROUND_LIGHT, FRAMES);
    assertEquals(2, count(StaticReport.Finding.SKY_MOVES, low, skyline));
    assertEquals(0, count(StaticReport.Finding.SKY_STAYS, low, skyline));
  }

  @Test
  void hotPixelsAndWhatStaysForAWhileDoNot() {
    StaticSpot hot = spot(600, StaticSpot.Kind.HOT_PIXEL, FRAMES);
    StaticSpot brief = spot(600, StaticSpot.Kind.GROUND_LIGHT, 3);
    assertEquals(0, count(StaticReport.Finding.SKY_MOVES, hot, brief));
  }

  /** Of wide spots as dense in the sky as below it none need be a lamp: 4 of 7.2, 5 rows in 12. */
  @Test
  void wideHotPixelsOfDevelopedFilesAreTakenOff() {
    StaticSpot low = spot(600, StaticSpot.Kind.GROUND_LIGHT, FRAMES);
    StaticSpot aloft = spot(100, StaticSpot.Kind.GROUND_LIGHT, FRAMES);
    assertEquals(0, count(StaticReport.Finding.SKY_MOVES, low, aloft));
    assertEquals(1, count(StaticReport.Finding.SKY_MOVES, low, low, low, aloft));
  }
}
