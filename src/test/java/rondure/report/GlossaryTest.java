package rondure.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import rondure.report.ReportSettings.Voice;
import rondure.report.layout.TemplateFolder;

/** Every technical word that a report uses is told in plain words on its last pages. */
class GlossaryTest {
  /** How a word is found in the report, by the words of its line in the glossary. */
  private static final Map<String, String> TECHNICAL = new TreeMap<>();

  static {
    put("100 %", "at 100 %");
    put("4K screen", "4K");
    put("500 rule", "500 rule");
    put("aim", "aims?");
    put("aperture, f/", "apertures?|f/|f-number|stopp?(ed|ing)? down");
    put("astigmatism", "astigmatism|astigmatic");
    put("average star", "average stars?");
    put("b/a, roundness", "b/a|roundness|axis ratio");
    put("blur budget", "blur budgets?");
    put("celestial equator, pole", "equator|poles?");
    put("centre, midway, edge", "midway");
    put("coherence", "coherence");
    put("coma", "coma|comatic");
    put("core", "cores?");
    put("declination", "declinations?");
    put("defocus", "defocus");
    put("degenerate", "degenerate");
    put("direction fan", "direction (fan|wheel)");
    put("ellipse map", "ellipse map");
    put("elongation", "elongation");
    put("exposure", "exposures?");
    put("field curvature", "curvature");
    put("fisheye", "fisheye");
    put("flux", "flux");
    put("focal length", "focal lengths?");
    put("focus test", "focus tests?");
    put("FWHM, width", "FWHM|half maximum|half-maximum");
    put("halo, wings", "halos?|wings?");
    put("hot pixel", "hot pixels?");
    put("ISO", "ISO");
    put("kurtosis", "kurtosis");
    put("live view", "live view");
    put("magnitude", "magnitudes?|mag");
    put("median", "medians?");
    put("Moffat", "Moffat");
    put("mount", "mounts?");
    put("noise", "noise");
    put("NPF rule", "NPF");
    put("parabola", "parabola");
    put("percentile", "percentiles?");
    put("pixel pitch", "pixel pitch");
    put("px, px²", "px|px²");
    put("RAW", "RAW");
    put("saturated", "saturated");
    put("scene", "scenes?");
    put("second moment", "second moments?");
    put("seconds of arc, ″", "(seconds|minutes) of arc|″|′");
    put("signal-to-noise", "signal-to-noise");
    put("sky background", "sky background|white level");
    put("sky trailing", "sky trailing|trailing|trails?");
    put("spin-2", "spin-2");
    put("standard error, σ", "standard errors?|2σ|σ");
    put("tilt", "tilt(ed)?");
    put("undecided", "undecided");
  }

  private static List<String> glossary;
  private static String report;

  private static void put(String entry, String words) {
    TECHNICAL.put(entry, words);
  }

  @BeforeAll
  static void read() throws Exception {
    glossary = new ArrayList<>();
    StringBuilder text = new StringBuilder();
    for (Voice voice : Voice.values()) {
      Document page = PlainLanguageTest.page(TalkativeBook.night(), voice);
      NodeList tables = page.getElementsByTagName("table");
      for (int i = tables.getLength() - 1; i >= 0; i--) {
        Element table = (Element) tables.item(i);
        if (table.getAttribute("class").equals("words")) {
          glossary = entries(table);
          table.getParentNode().removeChild(table);
        }
      }
      text.append(page.getDocumentElement().getTextContent()).append('\n');
    }
    TemplateFolder folder = TemplateFolder.of(Optional.empty());
    for (String file : PdfReport.wordingFiles(Voice.TEACHER)) {
      text.append(folder.text(file));
    }
    report = text.toString();
  }

  private static List<String> entries(Element table) {
    List<String> entries = new ArrayList<>();
    NodeList rows = table.getElementsByTagName("tr");
    for (int i = 1; i < rows.getLength(); i++) {
      Element row = (Element) rows.item(i);
      entries.add(row.getElementsByTagName("td").item(0).getTextContent());
      String meaning = row.getElementsByTagName("td").item(1).getTextContent();
      assertTrue(meaning.split(" ").length > 4 && meaning.endsWith("."), meaning);
    }
    return entries;
  }

  private static boolean isUsed(String words) {
    String whole = "(?iu)(?<![\\p{L}\\d-])(" + words + ")(?![\\p{L}-])";
    return Pattern.compile(whole).matcher(report).find();
  }

  @Test
  void everyTechnicalWordHasItsLine() {
    List<String> missing = new ArrayList<>();
    TECHNICAL.forEach(
        (entry, words) -> {
          if (isUsed(words) && !glossary.contains(entry)) {
            missing.add(entry);
          }
        });
    assertEquals(List.of(), missing);
  }

  @Test
  void everyLineTellsAWordThatReportsUse() {
    List<String> idle = new ArrayList<>();
    for (String entry : glossary) {
      assertTrue(TECHNICAL.containsKey(entry), entry + " is not on the list of technical words");
      if (!isUsed(TECHNICAL.get(entry))) {
        idle.add(entry);
      }
    }
    assertEquals(List.of(), idle);
  }

  @Test
  void theLinesStandInTheOrderOfTheAlphabet() {
    List<String> sorted = new ArrayList<>(glossary);
    sorted.sort(String.CASE_INSENSITIVE_ORDER);
    assertEquals(sorted, glossary);
  }
}
