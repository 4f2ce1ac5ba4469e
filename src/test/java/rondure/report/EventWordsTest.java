package rondure.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import rondure.night.Event;
import rondure.night.EventKind;
import rondure.night.NightBook;
import rondure.report.layout.TemplateFolder;
import rondure.report.layout.TemplateProblem;
import rondure.report.layout.Wording;

/** What happened, in words. */
class EventWordsTest {
  private static String said(double jumpPx) throws TemplateProblem {
    NightBook night = BookFixture.night(8);
    Event event = new Event(EventKind.RE_AIM, 1, 2, 2, new TreeMap<>(Map.of("jumpPx", jumpPx)));
    NightBook book =
        new NightBook(
            "ridge",
            night.nights(),
            night.scenes(),
            night.frames(),
            Map.of(),
            Map.of(),
            List.of(event),
            List.of(),
            List.of());
    Wording words =
        Wording.of(TemplateFolder.of(Optional.empty()), List.of("wording-student.properties"));
    String line = new EventWords(book, words).lines().get(0);
    return line.substring(line.indexOf("): ") + 3);
  }

  /** Aims that share no star stand at least half a diagonal apart, however far it was. */
  @Test
  void aFarAimIsNotToldToThePixel() throws TemplateProblem {
    assertEquals("the camera was aimed anew, by 450 px.", said(450));
    assertEquals("the camera was aimed anew, by a third of the view or more.", said(2010));
  }
}
