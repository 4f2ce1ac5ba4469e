package rondure.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import rondure.Settings;
import rondure.night.NightBook;
import rondure.report.ReportSettings.Entries;
import rondure.report.ReportSettings.PageSize;
import rondure.report.ReportSettings.Voice;
import rondure.report.layout.Pictures;
import rondure.report.layout.TemplateFolder;
import rondure.report.layout.Wording;

/**
 * Whole reports in both wordings are plain: Flesch's reading ease is 60 or more, "standard" English
 * for readers of 13 to 15 years, and no sentence is longer than 25 words.
 */
class PlainLanguageTest {
  private static final double LEAST_EASE = 60;
  private static final int MOST_WORDS = 25;

  /** A list of the libraries and their licences, to look up rather than to read. */
  private static final String CREDITS = "It builds on Apache PDFBox";

  private static Map<String, NightBook> books() {
    Map<String, NightBook> books = new LinkedHashMap<>();
    books.put("everything happens", TalkativeBook.night());
    for (int frames : new int[] {1, 2, 12, 60}) {
      books.put(frames + " frames", BookFixture.night(frames));
    }
    return books;
  }

  static Document page(NightBook book, Voice voice) throws Exception {
    ReportSettings settings =
        new ReportSettings(
            PageSize.A4,
            voice,
            Optional.empty(),
            Entries.ALL,
            60,
            "0.1.0",
            Settings.shownDefaults());
    TemplateFolder folder = TemplateFolder.of(Optional.empty());
    Wording words = Wording.of(folder, PdfReport.wordingFiles(voice));
    ReportContext context = new ReportContext(book, settings, words, new Pictures());
    String text = PdfReport.page(context, folder).xhtml();
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new InputSource(new java.io.StringReader(text)));
  }

  /** Parts of the report by the ids of their pages; a sentence said many times counts once. */
  private static Map<String, Prose> parts(NightBook book, Voice voice) throws Exception {
    Map<String, Prose> parts = new LinkedHashMap<>();
    Element body = (Element) page(book, voice).getElementsByTagName("body").item(0);
    parts.put("the whole", Prose.of(body));
    NodeList children = body.getChildNodes();
    for (int i = 0; i < children.getLength(); i++) {
      if (children.item(i) instanceof Element part && part.hasAttribute("id")) {
        parts.put(part.getAttribute("id"), Prose.of(part));
      } else if (children.item(i) instanceof Element part) {
        parts.put(part.getAttribute("class"), Prose.of(part));
      }
    }
    return parts;
  }

  @ParameterizedTest
  @EnumSource(Voice.class)
  void wholeReportsAndTheirPartsReadEasily(Voice voice) throws Exception {
    List<String> hard = new ArrayList<>();
    for (Map.Entry<String, NightBook> book : books().entrySet()) {
      Map<String, Prose> parts = parts(book.getValue(), voice);
      assertTrue(parts.get("the whole").sentences().size() > 60);
      parts.forEach(
          (name, prose) -> {
            double ease = prose.sentences().isEmpty() ? LEAST_EASE : prose.readingEase();
            if (ease < LEAST_EASE) {
              hard.add(book.getKey() + ", " + name + ": " + ease);
            }
          });
    }
    assertEquals(List.of(), hard);
  }

  @ParameterizedTest
  @EnumSource(Voice.class)
  void noSentenceOfAReportIsLong(Voice voice) throws Exception {
    Set<String> tooLong = new TreeSet<>();
    for (NightBook book : books().values()) {
      Prose.of(page(book, voice).getDocumentElement()).sentences().stream()
          .filter(sentence -> Prose.length(sentence) > MOST_WORDS)
          .filter(sentence -> !sentence.startsWith(CREDITS))
          .forEach(tooLong::add);
    }
    assertEquals(Set.of(), tooLong);
  }
}
