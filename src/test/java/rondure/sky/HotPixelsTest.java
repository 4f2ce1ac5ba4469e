package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rondure.stars.SkyMask;
import rondure.stars.StarField;
import rondure.testing.Fields;

/** A hot pixel is a point by nature: its width is the developing's. */
class HotPixelsTest {
  private static final StarField FIELD = Fields.field(1200, 800, List.of(), List.of());

  private static StaticReport report(StaticReport.Finding finding, double... widthsPx) {
    List<StaticSpot> spots = new ArrayList<>();
    for (double width : widthsPx) {
      double x = 300 + 40 * spots.size();
      Optional<Double> known = width < 0 ? Optional.empty() : Optional.of(width);
      spots.add(new StaticSpot(x, 300, StaticSpot.Kind.HOT_PIXEL, 0, 5, 6, known));
    }
    return new StaticReport(finding, List.of(FIELD), List.of(0), spots);
  }

  @Test
  void theMedianWidthOfHotPixelsIsWhatDevelopingAdds() {
    StaticReport report = report(StaticReport.Finding.SKY_MOVES, 1.7, 1.9, 1.8, -1);
    HotPixels hot = HotPixels.of(report).orElseThrow();
    assertEquals(3, hot.count());
    assertEquals(1.8, hot.fwhmPx(), 1e-12);
  }

  @Test
  void singlePhotositesHaveNoWidth() {
    StaticReport report = report(StaticReport.Finding.SKY_MOVES, 0, 0, 0, 0);
    assertEquals(0, HotPixels.of(report).orElseThrow().fwhmPx());
  }

  @Test
  void fewSpotsOrAStandingSkyTellNothing() {
    assertTrue(HotPixels.of(report(StaticReport.Finding.SKY_MOVES, 1.7, 1.8)).isEmpty());
    assertTrue(HotPixels.of(report(StaticReport.Finding.SKY_STAYS, 1.7, 1.8, 1.9)).isEmpty());
  }

  @Test
  void spotsOverLandOrBesideItMayBeLampsAndDoNotCount() {
    List<String> rows = new ArrayList<>();
    for (int row = 0; row < 13; row++) {
      rows.add((row < 6 ? "1" : "0").repeat(19));
    }
    StarField halfLand =
        new StarField(
            1200,
            800,
            List.of(),
            List.of(),
            Map.of(),
            FIELD.sky(),
            new SkyMask(64, rows),
            List.of(),
            List.of());
    List<StaticSpot> spots = new ArrayList<>();
    for (int i = 1; i < 6; i++) {
      double y = i % 2 == 0 ? 5.5 * 64 : 9 * 64;
      spots.add(new StaticSpot(100 * i, y, StaticSpot.Kind.HOT_PIXEL, 0, 5, 6, Optional.of(1.0)));
    }
    StaticReport report =
        new StaticReport(StaticReport.Finding.SKY_MOVES, List.of(halfLand), List.of(0), spots);
    assertTrue(HotPixels.of(report).isEmpty());
  }
}
