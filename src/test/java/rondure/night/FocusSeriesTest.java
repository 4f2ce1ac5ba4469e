package rondure.night;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rondure.base.Moments;
import rondure.blur.AttributionSettings;
import rondure.blur.OneFrameAttribution;
import rondure.night.FocusSeries.Ending;
import rondure.night.FocusSeries.Steps;

/** Focus test series in the book of a night. */
class FocusSeriesTest {

  /** Frames whose discs are so large, 1 px² of core, half a minute apart. */
  private static List<MeasuredExposure> night(double... discsPx) {
    List<MeasuredExposure> frames = new ArrayList<>();
    for (int i = 0; i < discsPx.length; i++) {
      String file = String.format("f%02d.tif", i + 1);
      Exposures exposure = Exposures.at(file, Exposures.EVENING.plusSeconds(30L * i));
      exposure.shape = Moments.round(1 + discsPx[i] * discsPx[i] / 16);
      frames.add(exposure.make());
    }
    return frames;
  }

  private static NightBook book(List<MeasuredExposure> frames, NamedSeries... named) {
    return NightBuilder.build(
        new NightInput("night", frames, Map.of(), List.of(), List.of(named)),
        NightSettings.defaults(),
        new OneFrameAttribution(AttributionSettings.defaults()));
  }

  private static final double[] TEST = {
    5.2, 3.9, 2.6, 1.3, 0, 1.3, 2.6, 3.9, 0.3, 0.3, 0.3, 0.3, 0.3, 0.3
  };

  @Test
  void aTestIsFoundWithItsMinimumAndItsDisc() {
    FocusSeries series = book(night(TEST)).focusSeries().get(0);
    assertFalse(series.named());
    assertEquals(8, series.points().size());
    assertEquals(Steps.EQUAL, series.steps());
    assertEquals(4, series.bestFrame());
    assertEquals(4, series.curve().orElseThrow().at(), 0.02);
    assertEquals(1.3, series.curve().orElseThrow().discPxPerStep(), 0.02);
    assertEquals(FocusSeries.Side.AT_BEST, series.others().get(0).side());
    assertTrue(series.others().get(0).after());
  }

  @Test
  void itsFramesAreNotGradedAndGiveNoEvents() {
    NightBook book = book(night(TEST));
    for (int i = 0; i < TEST.length; i++) {
      NightFrame frame = book.frames().get(i);
      assertEquals(i < 8, frame.isFocusTest(), frame.file());
      assertEquals(i < 8, frame.grade().isEmpty(), frame.file());
      assertEquals(i < 8 ? Optional.of(NightFrame.FOCUS_TEST) : Optional.empty(), frame.reason());
    }
    assertEquals(List.of(), book.events());
    assertEquals(6, book.nights().get(0).keepCount());
  }

  @Test
  void aNightWithoutATestHasNone() {
    double[] quiet = IntStream.range(0, 20).mapToDouble(i -> 0.5).toArray();
    assertEquals(List.of(), book(night(quiet)).focusSeries());
  }

  @Test
  void aNamedSeriesThatNeverPassesItsBestSaysSo() {
    double[] discs = {5.2, 3.9, 2.6, 1.3, 0, 0, 0, 0};
    NightBook book = book(night(discs), new NamedSeries("f05.tif", "f01.tif"));
    FocusSeries series = book.focusSeries().get(0);
    assertTrue(series.named());
    assertEquals(5, series.points().size());
    assertEquals(Ending.LAST_SHARPEST, series.ending());
    assertEquals(4, series.bestFrame());
    assertEquals(Optional.empty(), series.curve());
  }

  @Test
  void aNamedSeriesOfLikeFramesSaysThatNothingChanged() {
    NightBook book = book(night(0, 0, 0, 0, 0), new NamedSeries("f01.tif", "f05.tif"));
    assertEquals(Ending.NO_CHANGE, book.focusSeries().get(0).ending());
  }

  private static final double[] THERE_AND_BACK = {
    0.6, 0.6, 0.6, 5.2, 3.9, 2.6, 1.3, 0, 1.3, 2.6, 3.9, 2.9, 1.9, 0.6, 0.6, 0.6, 0.6
  };

  @Test
  void framesOnTheWayBackBelongToTheTestButNotToItsCurve() {
    NightBook book = book(night(THERE_AND_BACK));
    FocusSeries series = book.focusSeries().get(0);
    assertEquals(1, book.focusSeries().size());
    assertEquals(List.of(11, 12), series.onTheWay());
    assertEquals(8, series.points().size());
    assertEquals(List.of(3, 4, 5, 6, 7, 8, 9, 10, 11, 12), series.members());
    assertEquals(4, series.curve().orElseThrow().at(), 0.05);
    assertEquals(7, series.bestFrame());
    assertEquals(List.of(), book.events());
  }

  @Test
  void aNamedTestMayHoldTheWayBack() {
    NightBook book = book(night(THERE_AND_BACK), new NamedSeries("f04.tif", "f13.tif"));
    FocusSeries series = book.focusSeries().get(0);
    assertTrue(series.named());
    assertEquals(List.of(11, 12), series.onTheWay());
    assertEquals(4, series.curve().orElseThrow().at(), 0.05);
  }

  @Test
  void theBestFrameMustBeAPoint() {
    FocusSeries series = book(night(TEST)).focusSeries().get(0);
    assertThrows(
        IllegalArgumentException.class,
        () ->
            new FocusSeries(
                1,
                1,
                false,
                series.points(),
                List.of(),
                Steps.EQUAL,
                Ending.BOTH_SIDES,
                series.curve(),
                99,
                List.of()));
  }
}
