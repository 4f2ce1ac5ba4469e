package rondure.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import rondure.blur.Cause;
import rondure.blur.Verdict;
import rondure.intake.Fact;
import rondure.night.Event;
import rondure.night.EventKind;
import rondure.night.NightBook;
import rondure.night.NightFrame;
import rondure.report.layout.Pictures;
import rondure.report.layout.TemplateFolder;
import rondure.report.layout.TemplateProblem;
import rondure.report.layout.Wording;
import rondure.report.picture.Mark;

/** What to do next time carries the night's numbers, what gains most first. */
class AdviceTest {
  private static ReportContext context(NightBook book) throws TemplateProblem {
    Wording words =
        Wording.of(TemplateFolder.of(Optional.empty()), List.of("wording-student.properties"));
    return new ReportContext(
        book, ReportSettings.defaults("0.1.0", List.of()), words, new Pictures());
  }

  private static List<String> advice(NightBook book) throws TemplateProblem {
    ReportContext context = context(book);
    return Advice.of(context, context.tally(frame -> true)).stream()
        .map(point -> (point.action() + " " + point.reason()).strip())
        .toList();
  }

  private static NightBook of(Predicate<NightFrame> wanted, Event... events) {
    NightBook book =
        BookFixture.book(
            "ridge", BookFixture.night(60).frames().stream().filter(wanted).limit(9).toList());
    return new NightBook(
        "ridge",
        book.nights(),
        book.scenes(),
        book.frames(),
        Map.of(),
        Map.of(),
        List.of(events),
        List.of(),
        List.of());
  }

  private static Predicate<NightFrame> by(Mark mark) {
    return frame -> Ranking.isMeasured(frame) && Mark.of(frame) == mark;
  }

  private static Event event(EventKind kind, Map<String, Double> sizes) {
    return new Event(kind, 1, 0, 2, new TreeMap<>(sizes));
  }

  /** 24 % an hour is 10 % in 25 minutes. */
  @Test
  void theRefocusIntervalIsTheTimeInWhichStarsGrowByATenth() throws TemplateProblem {
    assertEquals(25, EventAdvice.refocusMinutes(24), 1e-12);
    Event creep = event(EventKind.FOCUS_CREEP, Map.of("growthPercentPerHour", 24.0));
    String said = advice(of(by(Mark.FOCUS), creep)).get(0);
    assertTrue(said.contains("Refocus every 25 minutes"), said);
    assertTrue(advice(of(by(Mark.NONE), creep)).get(0).contains("every 25 minutes"));
  }

  /** How often stands where it reads well, and a sentence begins with a capital. */
  @Test
  void howOftenAnEventCameReadsWell() throws TemplateProblem {
    Event knocked = event(EventKind.FOCUS_KNOCKED, Map.of("widthRatio", 1.2));
    Event hand = event(EventKind.HAND_ON_SHUTTER, Map.of("wideningRatio", 1.4));
    List<String> said = advice(of(by(Mark.NONE), knocked, hand));
    assertTrue(said.contains("Tape the focus ring. The focus jumped once."), said + "");
    String shook = "The camera shook at the start of a burst once, and stars grew up to 1.4 times";
    assertTrue(said.stream().anyMatch(line -> line.contains(" " + shook)), said + "");
  }

  /** Half the exposure tells trails from a moving tripod, not haze from nothing. */
  @Test
  void whatSettlesAnOpenCauseIsAdvisedByWhatItStandsBetween() throws TemplateProblem {
    NightBook trails = of(by(Mark.UNDECIDED));
    String half = String.join(" ", advice(trails));
    assertTrue(half.contains("half the exposure") && half.contains("sky can draw"), half);
    Map<Cause, Double> odds = new EnumMap<>(Cause.class);
    Arrays.stream(Cause.values()).forEach(cause -> odds.put(cause, 0.05));
    odds.put(Cause.HAZE, 0.45);
    odds.put(Cause.NONE, 0.35);
    Verdict open = Verdict.of(odds, List.of());
    List<NightFrame> frames =
        trails.frames().stream().map(frame -> BookFixture.withVerdict(frame, open)).toList();
    String said = String.join(" ", advice(BookFixture.book("ridge", frames)));
    assertTrue(said.contains("Wipe the front of the lens"), said);
    assertFalse(said.contains("half the exposure") || said.contains("sky can draw"), said);
  }

  /** Half of the frames 13 s, half 80 s: no frame was exposed for their mean, 46.5 s. */
  @Test
  void theUsualExposureIsOneThatWasMade() {
    NightBook book = of(Ranking::isMeasured);
    NightBook even = BookFixture.book("ridge", book.frames().subList(0, 8));
    AtomicInteger turn = new AtomicInteger();
    SceneFigures figures = SceneFigures.of(even, even.scenes().get(0));
    Optional<Double> usual =
        figures.usual(
            facts ->
                Optional.of(
                    new Fact<>(turn.getAndIncrement() % 2 == 0 ? 13.0 : 80.0, Fact.Source.FILE)));
    assertEquals(Optional.of(13.0), usual);
  }

  /** Of two scenes with trails the advice is for the one where the sky spoilt more frames. */
  @Test
  void theShorterExposureIsForTheSceneWithMostTrails() throws TemplateProblem {
    List<NightFrame> trailed =
        BookFixture.night(300).frames().stream()
            .filter(by(Mark.TRAILING).or(by(Mark.UNDECIDED)))
            .toList();
    int first = trailed.get(0).sceneNumber().orElseThrow();
    List<NightFrame> more =
        trailed.stream().filter(frame -> frame.sceneNumber().orElseThrow() != first).toList();
    List<NightFrame> some = more.subList(0, 2);
    NightBook both =
        BookFixture.book("ridge", Stream.concat(trailed.stream().limit(1), some.stream()).toList());
    Optional<AdvicePoint> ofTheMost = ShorterExposure.of(context(BookFixture.book("ridge", some)));
    assertTrue(ofTheMost.isPresent());
    assertEquals(ofTheMost, ShorterExposure.of(context(both)));
    Optional<AdvicePoint> ofTheFirst =
        ShorterExposure.of(context(BookFixture.book("ridge", trailed.subList(0, 1))));
    assertNotEquals(ofTheFirst, ofTheMost);
  }

  /** 3 px a minute in 20 s is 1 px. */
  @Test
  void weightDelayAndHeadComeFromTheEventsBehindTheTripod() throws TemplateProblem {
    Event gusts = event(EventKind.GUSTS, Map.of("wideningRatio", 1.8, "frameCount", 7.0));
    Event hand = event(EventKind.HAND_ON_SHUTTER, Map.of("wideningRatio", 1.4));
    Event droop = event(EventKind.DROOP, Map.of("driftPxPerMin", 3.0, "angleDeg", 90.0));
    String wind = advice(of(by(Mark.TRIPOD), hand, gusts)).get(0);
    assertTrue(wind.contains("7 frames") && wind.contains("Hang a weight"), wind);
    assertTrue(wind.contains("1.8 times"), wind);
    String delay = advice(of(by(Mark.TRIPOD), hand)).get(0);
    assertTrue(delay.contains("delay of two seconds"), delay);
    NightBook drooping = of(by(Mark.TRIPOD), droop);
    String head = advice(drooping).get(0);
    double seconds =
        SceneFigures.of(drooping, drooping.scenes().get(0))
            .usual(facts -> facts.exposureSeconds())
            .orElseThrow();
    assertTrue(head.contains("which is " + Figures.px(3.0 / 60 * seconds) + " px in"), head);
  }

  /**
   * A part of the second moment taken away narrows the star to √(1 - part / all): second moments of
   * independent blurs add (closed form).
   */
  @Test
  void whatGainsMostComesFirst() throws TemplateProblem {
    NightBook book = BookFixture.night(60);
    ReportContext context = context(book);
    Worth worth = new Worth(context);
    // The fixture's trailed frames: 1.9 px² of 2.89 by the sky.
    double all = 0.82 + 0.03 + 1.9 + 0.02 + 0.12;
    assertEquals(1 - Math.sqrt(1 - 1.9 / all), worth.typical(Mark.TRAILING), 1e-9);
    List<Mark> causes =
        context.tally(frame -> true).keySet().stream().filter(mark -> mark != Mark.NONE).toList();
    Mark best =
        causes.stream().max(java.util.Comparator.comparingDouble(worth::total)).orElseThrow();
    List<String> advice = advice(book);
    assertEquals(3, advice.size());
    int count = context.tally(frame -> true).get(best);
    assertTrue(advice.stream().anyMatch(line -> line.contains(count + " frames")), advice + "");
  }

  /** Trails of the table: ω T f/p cos δ, ω = 15.0410686″/s; here f/p = 4012.5 px, δ = -12.5°. */
  @Test
  void theTableGivesTrailSharesAndTheLimitForEachAim() throws TemplateProblem {
    NightBook book = BookFixture.night(12);
    TrailTables tables = new TrailTables(context(book));
    CourseView.TrailTable table = tables.table(tables.chosen().get(0));
    assertEquals(List.of("this aim", "equator", "45° from it", "10° from a pole"), table.aims());
    double width = tables.chosen().get(0).ownWidthPx().orElseThrow();
    double pxPerS = Math.toRadians(15.0410686 / 3600) * 4012.5;
    List<String> last = table.rows().get(table.rows().size() - 1).cells();
    assertEquals(Figures.aboutExposure(width / pxPerS), last.get(1));
    assertEquals(
        Figures.aboutExposure(width / pxPerS / Math.cos(Math.toRadians(12.5))), last.get(0));
    int row =
        IntStream.range(0, table.rows().size())
            .filter(i -> table.rows().get(i).exposure().startsWith("15 s"))
            .findFirst()
            .orElseThrow();
    String cell = table.rows().get(row).cells().get(1);
    assertTrue(cell.startsWith(Figures.px(15 * pxPerS) + " px, "), cell);
    assertTrue(
        cell.endsWith(Figures.fixed(15 * pxPerS < width ? 2 : 1, 15 * pxPerS / width) + " ×"),
        cell);
  }

  /** 500 over the 35 mm equivalent: 36 mm · 4012.5 px / 6000 px = 24.075 mm, 20.8 s. */
  @Test
  void theRulesStandBesideTheTable() throws TemplateProblem {
    TrailTables tables = new TrailTables(context(BookFixture.night(12)));
    List<String> said = tables.table(tables.chosen().get(0)).sentences();
    assertTrue(said.get(0).contains("500 rule gives 21 s"), said.get(0));
    assertTrue(said.get(1).contains("NPF rule (k = 1"), said.toString());
  }

  /** Of the edges' 2.83 px² the lens makes 1.9: 67 %; f/2.8 and a stop is f/4. */
  @Test
  void stoppingDownIsAdvisedFromTheLensShareOnly() throws TemplateProblem {
    NightBook soft = of(by(Mark.LENS));
    ReportContext context = context(soft);
    String yes =
        StopDown.sentence(SceneFigures.of(soft, soft.scenes().get(0)), context.words()).orElse("");
    assertTrue(yes.contains("f/2.8 the lens makes 67 % of the blur at the edges"), yes);
    assertTrue(yes.contains("nothing for sky and tripod"), yes);
    NightBook trailed = of(by(Mark.TRAILING));
    String no =
        StopDown.sentence(SceneFigures.of(trailed, trailed.scenes().get(0)), context.words())
            .orElse("");
    assertTrue(yes.contains("Stopping down to f/4 helps"), yes);
    assertTrue(no.contains("would gain little"), no);
  }
}
