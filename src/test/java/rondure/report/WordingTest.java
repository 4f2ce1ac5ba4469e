package rondure.report;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rondure.blur.Cause;
import rondure.blur.Evidence;
import rondure.intake.Fact;
import rondure.night.EventKind;
import rondure.night.FrameStatus;
import rondure.night.Grade;
import rondure.night.GradeReason;
import rondure.report.layout.TemplateFolder;
import rondure.report.layout.TemplateProblem;
import rondure.report.layout.Wording;
import rondure.report.picture.Mark;
import rondure.sky.Projection;
import rondure.sky.SceneSky;
import rondure.stars.AverageStar;

class WordingTest {
  private static final List<String> FILES =
      List.of("wording-student.properties", "wording-teacher.properties");
  private static final int LONGEST_SENTENCE_WORDS = 25;

  @Test
  void noSentenceIsLongerThanTwentyFiveWords() throws TemplateProblem {
    TemplateFolder folder = TemplateFolder.of(Optional.empty());
    for (String file : FILES) {
      for (String line : folder.text(file).split("\n")) {
        if (!line.startsWith("#") && line.contains("=")) {
          checkLength(line.substring(line.indexOf('=') + 1));
        }
      }
    }
    for (String file :
        List.of("glance", "course", "series", "scenes", "entry", "tables", "method")) {
      String text = folder.text(file + ".html");
      boolean creditsBegin = text.contains("<h2>Made with</h2>");
      String prose = creditsBegin ? text.substring(0, text.indexOf("<h2>Made with</h2>")) : text;
      for (String paragraph : prose.split("<(/?p|/?h[12]|/?div|/?td|/?th|/?li)[^>]*>")) {
        checkLength(paragraph.replaceAll("<[^>]*>", " "));
      }
    }
  }

  private static void checkLength(String text) {
    for (String sentence : text.split("(?<=[.!?:;])\\s")) {
      long words = Arrays.stream(sentence.trim().split("\\s+")).filter(w -> !w.isEmpty()).count();
      assertTrue(words <= LONGEST_SENTENCE_WORDS, words + " words: " + sentence.trim());
    }
  }

  @Test
  void everythingTheAnalysisCanSayHasWords() throws TemplateProblem {
    Wording words = Wording.of(TemplateFolder.of(Optional.empty()), FILES);
    List<String> keys = new ArrayList<>();
    for (Mark mark : Mark.values()) {
      keys.add("mark." + mark);
    }
    for (Cause cause : Cause.values()) {
      keys.addAll(List.of("cause." + cause, "action." + cause, "advice." + cause));
      keys.add("glance.cause." + cause);
      if (cause != Cause.NONE) {
        keys.add("glance.what." + cause);
      }
    }
    keys.addAll(List.of("action.UNDECIDED.HAZE", "action.UNDECIDED.LENS"));
    keys.addAll(List.of("action.UNDECIDED.FOCUS", "cause.unknown", "lens.projection.asTold"));
    keys.addAll(List.of("glance.rest.UNEXPLAINED", "advice.unexplained", "glance.rest.NONE"));
    for (EventKind kind : EventKind.values()) {
      keys.addAll(List.of("event." + kind, "glance.event." + kind));
    }
    for (SceneSky.Finding finding : SceneSky.Finding.values()) {
      keys.add("scene.sky." + finding);
    }
    for (Projection projection : Projection.values()) {
      keys.add("lens.projection." + projection);
    }
    for (GradeReason reason : GradeReason.values()) {
      if (reason != GradeReason.TIGHT) {
        keys.add("glance.rest.notKept." + reason);
      }
    }
    for (Cause cause : Cause.values()) {
      keys.add("action.notKept." + cause);
    }
    keys.addAll(List.of("cause.notKept.NONE", "why.TIGHT.lone"));
    keys.addAll(List.of("action.UNDECIDED", "advice.UNDECIDED", "glance.rest.UNDECIDED"));
    keys.add("glance.cause.UNDECIDED");
    for (Evidence.Kind kind : Evidence.Kind.values()) {
      keys.add("evidence." + kind);
    }
    for (Grade grade : Grade.values()) {
      keys.add("grade." + grade);
    }
    for (FrameStatus status : FrameStatus.values()) {
      keys.add("status." + status);
      if (status != FrameStatus.MEASURED) {
        keys.addAll(List.of("problem." + status + ".one", "problem." + status + ".many"));
      }
    }
    for (AverageStar.Zone zone : AverageStar.Zone.values()) {
      keys.add("picture.zone." + zone);
    }
    for (Fact.Source source : Fact.Source.values()) {
      if (source != Fact.Source.FILE) {
        keys.add("facts." + source);
      }
    }
    for (int eighth = 0; eighth < 8; eighth++) {
      keys.add("slope." + eighth);
      keys.add("lens.side." + eighth);
    }
    keys.forEach(key -> assertTrue(words.has(key), key));
  }

  @Test
  void directionsInWordsRunClockwiseAsDisplayed() throws TemplateProblem {
    CauseWords causes = new CauseWords(Wording.of(TemplateFolder.of(Optional.empty()), FILES));
    assertTrue(causes.slope(0).equals("level") && causes.slope(179).equals("level"));
    assertTrue(causes.slope(45).equals("falling to the right"), causes.slope(45));
    assertTrue(causes.slope(90).equals("upright"));
    assertTrue(causes.slope(135).equals("rising to the right"));
    assertTrue(causes.slope(-45).equals("rising to the right"));
  }
}
