package rondure.report.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** The strip of the night holds a sign for each frame, however many there are. */
class NightStripTest {
  private static final double WIDTH = 652;

  private static NightStrip.Run run(int frames, NightStrip.Span... spans) {
    NightStrip.Item item = new NightStrip.Item(Mark.NONE, true, "22:00", false);
    return new NightStrip.Run(Collections.nCopies(frames, item), List.of(spans));
  }

  @Property(tries = 80)
  void theStripNeverOutgrowsItsPlaceUpToThreeThousandFrames(
      @ForAll @IntRange(min = 1, max = 3000) int frames) {
    double height = new NightStrip(List.of(run(frames))).heightFor(WIDTH, 120);
    assertTrue(height > 4 && height <= 120, frames + " frames need " + height);
  }

  /** Signs stand within the line, and lines hold all of them. */
  @Property(tries = 80)
  void everyFrameHasItsPlace(@ForAll @IntRange(min = 1, max = 3000) int frames) {
    List<NightStrip.Run> runs = List.of(run(frames), run(frames / 2 + 1));
    StripLayout layout = StripLayout.fit(runs, WIDTH, 120);
    assertTrue(layout.perLine() * layout.lines(runs.get(0)) >= frames);
    double last = layout.x(layout.perLine() - 1) + layout.pitch() / 2;
    assertTrue(last <= WIDTH + 1e-6, "signs end at " + last);
    assertTrue(layout.pitch() >= 3, "pitch " + layout.pitch());
  }

  /** 1, 12, 20: one line, as large as it holds. 60: two lines rather than one of small signs. */
  @Test
  void signsAreAsLargeAsTheNightAllows() {
    for (int frames : List.of(1, 12, 20)) {
      StripLayout layout = StripLayout.fit(List.of(run(frames)), WIDTH, 150);
      assertEquals(1, layout.lines(run(frames)), frames + " frames");
      assertEquals(Math.min(38, WIDTH / frames), layout.pitch(), 1e-9);
    }
    StripLayout sixty = StripLayout.fit(List.of(run(60)), WIDTH, 150);
    assertEquals(2, sixty.lines(run(60)));
    assertEquals(WIDTH / 30, sixty.pitch(), 1e-9);
  }

  @Property(tries = 100)
  void namesOfEventsNeverTouch(@ForAll List<@IntRange(max = 29) Integer> starts) {
    List<NightStrip.Span> spans = new ArrayList<>();
    starts.forEach(at -> spans.add(new NightStrip.Span(at, at, "hand on the shutter")));
    StripLayout layout = StripLayout.fit(List.of(run(30)), WIDTH, 150);
    List<StripNames.Words> placed = StripNames.placed(spans, layout, 0);
    assertEquals(starts.isEmpty(), placed.isEmpty());
    for (int i = 0; i < placed.size(); i++) {
      assertTrue(placed.get(i).from() >= 0 && placed.get(i).to() <= WIDTH + 1e-6);
      for (int j = 0; j < i; j++) {
        StripNames.Words one = placed.get(i);
        StripNames.Words two = placed.get(j);
        assertTrue(one.from() >= two.to() || one.to() <= two.from(), one + ", " + two);
      }
    }
  }

  @Property(tries = 200)
  void labelsOfTheGradeBarNeverTouch(@ForAll @IntRange(min = 1, max = 2000) int keep) {
    List<GradeBar.Part> parts = new ArrayList<>();
    parts.add(new GradeBar.Part(keep, "keep", GradeBar.Filling.SOLID));
    for (String words : List.of("look closer", "set aside", "not measurable", "left out")) {
      parts.add(new GradeBar.Part(1, words, GradeBar.Filling.PALE));
    }
    double[] starts = new GradeBar(parts).labelStarts(WIDTH);
    for (int i = 0; i < starts.length; i++) {
      double end = i + 1 < starts.length ? starts[i + 1] : WIDTH;
      assertTrue(starts[i] >= 0 && starts[i] + parts.get(i).labelWidth() <= end + 1e-6);
    }
  }
}
