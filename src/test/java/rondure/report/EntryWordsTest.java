package rondure.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import rondure.blur.Budget;
import rondure.blur.Cause;
import rondure.blur.Evidence;
import rondure.blur.Terms;
import rondure.blur.Verdict;
import rondure.night.Grade;
import rondure.night.GradeReason;
import rondure.night.Graded;
import rondure.night.NightBook;
import rondure.night.NightFrame;
import rondure.night.Scene;
import rondure.report.layout.TemplateFolder;
import rondure.report.layout.TemplateProblem;
import rondure.report.layout.Wording;

/** No entry praises and blames at once, whatever cause, grade, sureness and evidence. */
class EntryWordsTest {
  private static final List<String> PRAISE =
      List.of("Nothing softened", "Nothing to do", "as tight", "as sharp");
  private static final List<String> BLAME =
      List.of("Likely cause", "knocked", "clearly oval", "is soft");
  private static final double[] SURENESS = {0.65, 0.95};

  private static NightFrame measured;
  private static Scene scene;
  private static List<CauseWords> voices;

  @BeforeAll
  static void prepare() throws TemplateProblem {
    NightBook book = BookFixture.night(20);
    measured = book.frames().stream().filter(Ranking::isMeasured).findFirst().orElseThrow();
    scene = book.scenes().get(measured.sceneNumber().orElseThrow() - 1);
    TemplateFolder folder = TemplateFolder.of(Optional.empty());
    String plain = "wording-student.properties";
    voices =
        List.of(
            new CauseWords(Wording.of(folder, List.of(plain))),
            new CauseWords(Wording.of(folder, List.of(plain, "wording-teacher.properties"))));
  }

  private static Map<Cause, Double> probabilities(Cause likeliest, double sureness) {
    Map<Cause, Double> map = new EnumMap<>(Cause.class);
    double rest = (1 - sureness) / (Cause.values().length - 1);
    Arrays.stream(Cause.values()).forEach(c -> map.put(c, c == likeliest ? sureness : rest));
    return map;
  }

  private static Evidence seen(Evidence.Kind kind) {
    Map<String, Double> values = new java.util.HashMap<>();
    for (String name :
        List.of(
            "widthRatio", "roundness", "angleDeg", "coherence", "trailPredictedPx", "edgeRatio")) {
      values.put(name, 0.9);
    }
    return new Evidence(kind, values);
  }

  private static NightFrame with(Verdict verdict, boolean kept) {
    return with(verdict, BookFixture.graded(kept), measured.budget());
  }

  private static NightFrame with(Verdict verdict, Graded graded, Optional<Budget> budget) {
    return new NightFrame(
        measured.file(),
        measured.copies(),
        measured.cameraName(),
        measured.sceneNumber(),
        measured.nightIndex(),
        measured.facts(),
        measured.status(),
        measured.reason(),
        measured.trailPredictedPx(),
        measured.shape(),
        Optional.of(verdict),
        budget,
        measured.course(),
        measured.usefulness(),
        Optional.of(graded),
        measured.measurement());
  }

  /** Oval or double stars are never "none", and double ones never kept. */
  private static boolean canBe(Cause cause, double sureness, boolean kept, Evidence.Kind kind) {
    boolean none = cause == Cause.NONE && sureness >= Verdict.DECIDED_FROM;
    boolean oval = kind == Evidence.Kind.STARS_OVAL || kind == Evidence.Kind.DOUBLE_IMAGE;
    return !(none && oval) && !(kept && oval);
  }

  private static List<String> entries(
      Cause cause, double sureness, boolean kept, CauseWords voice) {
    List<String> entries = new ArrayList<>();
    for (Evidence.Kind kind : Evidence.Kind.values()) {
      if (canBe(cause, sureness, kept, kind)) {
        Verdict verdict = Verdict.of(probabilities(cause, sureness), List.of(seen(kind)));
        NightFrame frame = with(verdict, kept);
        entries.add(voice.heading(frame) + " " + String.join(" ", voice.sentences(frame, scene)));
      }
    }
    return entries;
  }

  private static boolean hasAny(String text, List<String> phrases) {
    return phrases.stream().anyMatch(text::contains);
  }

  @Test
  void noEntryBothPraisesAndBlames() {
    int checked = 0;
    for (CauseWords voice : voices) {
      for (Cause cause : Cause.values()) {
        for (double sureness : SURENESS) {
          for (boolean kept : new boolean[] {true, false}) {
            for (String entry : entries(cause, sureness, kept, voice)) {
              assertFalse(hasAny(entry, PRAISE) && hasAny(entry, BLAME), entry);
              assertFalse(kept && entry.contains("Likely cause"), entry);
              checked++;
            }
          }
        }
      }
    }
    assertTrue(checked > 900, checked + " entries");
  }

  @Test
  void undecidedEntriesNeitherPraiseNorBlame() {
    Map<Cause, Double> even = probabilities(Cause.TRIPOD, 0.5);
    for (CauseWords voice : voices) {
      for (boolean kept : new boolean[] {true, false}) {
        NightFrame frame = with(Verdict.of(even, List.of()), kept);
        String heading = voice.heading(frame);
        assertTrue(heading.contains("ndecided"), heading);
        assertFalse(hasAny(heading, List.of("Likely cause", "Nothing softened")), heading);
      }
    }
  }

  @Test
  void aSharpFrameThatIsNotKeptSaysWhy() {
    NightFrame frame = with(Verdict.of(probabilities(Cause.NONE, 0.9), List.of()), false);
    String text = String.join(" ", voices.get(0).sentences(frame, scene));
    assertTrue(text.contains("Look closer: its stars are 1.4 times"), text);
  }

  /**
   * Of 0.6 px² beyond the core the sky makes 0.5: shorter exposures help, and it is not praised.
   */
  @Test
  void aFrameThatIsNotKeptIsToldWhatAddsMostToIt() {
    Terms terms = new Terms(0.9, 0.03, 0.5, 0.03, 0.04, 0, 0.01);
    Budget budget =
        new Budget(terms, terms, terms, 2.9, 0.7, 0.2, 0.96, 40, false, Optional.empty());
    Verdict verdict =
        Verdict.of(
            probabilities(Cause.NONE, 0.9),
            List.of(seen(Evidence.Kind.STARS_OVAL), seen(Evidence.Kind.ONE_DIRECTION_EVERYWHERE)));
    Graded oval =
        new Graded(
            Grade.SET_ASIDE,
            List.of(new Graded.Why(GradeReason.OVAL, Optional.of(0.55), Optional.of(0.6))));
    for (CauseWords voice : voices) {
      NightFrame frame = with(verdict, oval, Optional.of(budget));
      String entry = voice.heading(frame) + " " + String.join(" ", voice.sentences(frame, scene));
      assertFalse(hasAny(entry, PRAISE) || entry.contains("little stretch"), entry);
      assertTrue(entry.contains("turning sky: expose shorter"), entry);
      NightFrame open = with(verdict, oval, Optional.empty());
      assertTrue(String.join(" ", voice.sentences(open, scene)).contains("at 100 %"), entry);
    }
  }

  /** With one frame the sharpest tenth is the frame itself. */
  @Test
  void aLoneFrameIsNotHeldAgainstItself() {
    List<Evidence> lone = List.of(seen(Evidence.Kind.ONE_FRAME_ONLY));
    NightFrame frame = with(Verdict.of(probabilities(Cause.NONE, 0.9), lone), true);
    String text = String.join(" ", voices.get(0).sentences(frame, scene));
    assertTrue(text.contains("nothing sharper to compare") && !text.contains("the best of"), text);
  }

  @Test
  void aKeptFrameOutOfFocusIsNotToldToRefocus() {
    Verdict verdict = Verdict.of(probabilities(Cause.FOCUS, 0.9), List.of());
    String kept = String.join(" ", voices.get(0).sentences(with(verdict, true), scene));
    String other = String.join(" ", voices.get(0).sentences(with(verdict, false), scene));
    assertTrue(!kept.contains("Refocus") && kept.contains("drifting"), kept);
    assertTrue(other.contains("Refocus"), other);
  }

  @Test
  void oneDirectionEverywhereLeavesTheLensOnlyAPart() {
    List<Evidence> both =
        List.of(seen(Evidence.Kind.ONE_DIRECTION_EVERYWHERE), seen(Evidence.Kind.RADIAL_PATTERN));
    Verdict verdict = Verdict.of(probabilities(Cause.TRIPOD, 0.9), both);
    String text = String.join(" ", voices.get(0).sentences(with(verdict, false), scene));
    assertTrue(text.contains("A part of the stretch"), text);
  }

  /** Lamps on the ground settle whose motion it was, not whether the lens or the focus is soft. */
  @Test
  void whatWouldSettleAnOpenCauseIsSaid() {
    Map<List<Cause>, String> settles =
        Map.of(
            List.of(Cause.TRAILING, Cause.TRIPOD), "lights on the ground",
            List.of(Cause.FOCUS, Cause.LENS), "turn the focus",
            List.of(Cause.NONE, Cause.FOCUS), "small disc or ring",
            List.of(Cause.HAZE, Cause.NONE), "Wipe the front of the lens");
    settles.forEach(
        (between, words) -> {
          Map<Cause, Double> odds = new EnumMap<>(probabilities(between.get(0), 0.5));
          odds.put(between.get(0), 0.46);
          odds.put(between.get(1), odds.get(between.get(1)) + 0.04);
          Verdict open = Verdict.of(odds, List.of());
          assertTrue(open.undecidedBetween().equals(between), open.toString());
          String said = String.join(" ", voices.get(0).sentences(with(open, false), scene));
          assertTrue(said.contains(words), said);
        });
  }

  /** The reason to keep it says that its stars are like the best: that is not said twice. */
  @Test
  void aKeptFrameIsComparedWithTheBestOnce() {
    Verdict sharp =
        Verdict.of(
            probabilities(Cause.NONE, 0.95), List.of(seen(Evidence.Kind.AS_SHARP_AS_SHARPEST)));
    List<String> compared = List.of("of this lens that night", "10th percentile");
    for (CauseWords voice : voices) {
      List<String> kept = voice.sentences(with(sharp, true), scene);
      assertEquals(1, kept.stream().filter(line -> hasAny(line, compared)).count(), kept + "");
    }
    Graded.Why lost = new Graded.Why(GradeReason.HAZE, Optional.empty(), Optional.empty());
    Graded haze = new Graded(Grade.LOOK_CLOSER, List.of(lost));
    List<String> other = voices.get(0).sentences(with(sharp, haze, measured.budget()), scene);
    assertTrue(other.get(0).startsWith("Its stars are about as wide as the narrowest"), other + "");
  }

  @Test
  void anUnknownEdgeIsSaidInWords() throws TemplateProblem {
    Wording words =
        Wording.of(TemplateFolder.of(Optional.empty()), List.of("wording-student.properties"));
    assertEquals("2.3 px, edge not known", words.say("value.zonesCentre", "centre", "2.3"));
    assertEquals("edge 2.4 px, centre not known", words.say("value.zonesEdge", "edge", "2.4"));
  }
}
