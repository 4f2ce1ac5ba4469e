package rondure.report.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.geom.Line2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import rondure.sky.TrailRate;

class TrailChartTest {
  private static final double WIDTH = 652;
  private static final double HEIGHT = 480;
  private static final TrailChart.Words WORDS =
      new TrailChart.Words(
          "exposure, s",
          "trail in the middle of the frame, px",
          "longer than the star is wide: a line",
          "shorter than the star is wide");

  private static TrailChart.Aim aim(String name, double focalPx, double deg, double widthPx) {
    TrailRate rate = new TrailRate(focalPx, deg);
    String crossing =
        rate.secondsFor(widthPx).map(s -> String.format(Locale.ROOT, "%.3g s", s)).orElse("any");
    String later = name + ": " + crossing + " →";
    return new TrailChart.Aim(name, later, rate, crossing, name.equals("this aim"));
  }

  private static TrailChart chart(
      double focalPx, double ownDeg, double widthPx, List<Double> shares) {
    List<TrailChart.Aim> aims =
        List.of(
            aim("this aim", focalPx, ownDeg, widthPx),
            aim("equator", focalPx, 0, widthPx),
            aim("45° from it", focalPx, 45, widthPx),
            aim("10° from a pole", focalPx, 80, widthPx));
    List<TrailChart.Exposure> exposures = new ArrayList<>();
    double most = TrailPlot.mostSeconds(aims, widthPx);
    for (double share : shares) {
      String words = String.format(Locale.ROOT, "%.3g s: the 500 rule", share * most);
      exposures.add(new TrailChart.Exposure(share * most, words, words + " →"));
    }
    TrailChart.Width width = new TrailChart.Width(widthPx, "the star's own width, 2.3 px");
    return new TrailChart(aims, width, exposures, WORDS);
  }

  private static List<Rectangle2D> markBoxes(TrailPlot plot) {
    return plot.marks().marks().stream()
        .map(
            mark ->
                (Rectangle2D)
                    new Rectangle2D.Double(
                        TrailPlot.LEFT + mark.from(),
                        plot.area().getMaxY() + TrailPlot.AXIS_ROOM + 15 * mark.lane(),
                        mark.to() - mark.from(),
                        12))
        .toList();
  }

  /** Any lens, aim and exposures: words lie inside, on no other words and on no line or dot. */
  @Property(tries = 400)
  void wordsTouchNothing(
      @ForAll @DoubleRange(min = 300, max = 90_000) double focalPx,
      @ForAll @DoubleRange(min = 0, max = 90) double ownDeg,
      @ForAll @DoubleRange(min = 1, max = 12) double widthPx,
      @ForAll @Size(min = 0, max = 6) List<@DoubleRange(min = 0.01, max = 1.3) Double> shares) {
    TrailChart chart = chart(focalPx, ownDeg, widthPx, shares);
    TrailPlot plot = TrailPlot.of(chart, WIDTH, HEIGHT);
    List<TrailLabels.Label> labels = TrailLabels.of(chart, plot).labels();
    List<Rectangle2D> boxes = new ArrayList<>(markBoxes(plot));
    assertEquals(shares.size(), boxes.size(), "every exposure has its name");
    labels.forEach(label -> boxes.add(label.box()));
    Rectangle2D all = new Rectangle2D.Double(0, 0, WIDTH, HEIGHT);
    for (int i = 0; i < boxes.size(); i++) {
      assertTrue(all.contains(boxes.get(i)), "inside: " + boxes.get(i));
      for (int j = 0; j < i; j++) {
        assertFalse(boxes.get(i).intersects(boxes.get(j)), boxes.get(i) + " on " + boxes.get(j));
      }
    }
    for (TrailChart.Aim aim : chart.aims()) {
      Line2D line = new Line2D.Double(plot.origin(), plot.end(aim));
      for (TrailLabels.Label label : labels) {
        assertFalse(label.box().intersectsLine(line), label.words() + " on " + aim.name());
      }
    }
  }

  /** Every aim is named; each crossing that the field shows has its exposure. */
  @Property(tries = 100)
  void everyLineIsNamedAndEveryDotHasItsExposure(
      @ForAll @DoubleRange(min = 0, max = 90) double ownDeg) {
    TrailChart chart = chart(1000, ownDeg, 2.3, List.of());
    TrailPlot plot = TrailPlot.of(chart, WIDTH, HEIGHT);
    List<String> words =
        TrailLabels.of(chart, plot).labels().stream().map(TrailLabels.Label::words).toList();
    for (TrailChart.Aim aim : chart.aims()) {
      boolean isShown = plot.crossing(aim, 2.3).isPresent();
      assertTrue(words.contains(isShown ? aim.name() : aim.later()), aim.name() + " in " + words);
      assertEquals(isShown, words.contains(aim.crossing()), aim.crossing() + " in " + words);
    }
  }

  /** ω f/p = 7.292e-5 · 1000 px: 2.3 px in 31.5 s on the equator (IAU sidereal rate). */
  @Test
  void aDotLiesWhereTheTrailIsAsLongAsTheStarIsWide() {
    TrailChart chart = chart(1000, 22, 2.3, List.of(0.07));
    TrailPlot plot = TrailPlot.of(chart, WIDTH, HEIGHT);
    Point2D dot = plot.crossing(chart.aims().get(1), 2.3).orElseThrow();
    double seconds = 2.3 / 7.2921159e-5 / 1000;
    assertEquals(plot.x(seconds), dot.getX(), 1e-6);
    assertEquals(plot.y(2.3), dot.getY(), 1e-9);
    Drawn drawn = Drawn.of(chart, WIDTH, HEIGHT);
    assertTrue(drawn.isDark((int) dot.getX(), (int) dot.getY()), "the dot");
    double later = 1.5 * seconds;
    assertTrue(drawn.isDark((int) plot.x(later), (int) plot.y(3.45)), "its line goes on");
    assertFalse(drawn.isDark((int) plot.x(seconds / 2), (int) plot.y(3.45)), "nothing above it");
    int mark = (int) plot.x(0.07 * chart.mostSeconds());
    assertTrue(drawn.isDark(mark, (int) plot.area().getMaxY() - 5), "the exposure's tick");
  }
}
