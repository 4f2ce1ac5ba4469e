package rondure.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;
import rondure.Settings;
import rondure.night.NightBook;
import rondure.report.ReportSettings.Entries;
import rondure.report.ReportSettings.PageSize;
import rondure.report.ReportSettings.Voice;

/** Judged by veraPDF against ISO 14289-1 (PDF/UA-1) and ISO 19005-2 (PDF/A-2a). */
class PdfAccessibilityTest {
  private static final int SHOWN = 10;
  private static final int FULL_ENTRIES = 12;

  @BeforeAll
  static void prepare() {
    VeraGreenfieldFoundryProvider.initialise();
  }

  @Test
  void everyReportIsAccessibleAndMadeToLast() throws Exception {
    List<String> failures = new ArrayList<>();
    int count = 0;
    for (Map.Entry<String, NightBook> book : OddBooks.all().entrySet()) {
      Voice voice = Voice.values()[count++ % Voice.values().length];
      byte[] pdf = written(book.getValue(), voice);
      for (PDFAFlavour flavour : List.of(PDFAFlavour.PDFUA_1, PDFAFlavour.PDFA_2_A)) {
        for (String failure : failures(pdf, flavour)) {
          failures.add(book.getKey() + ", " + voice + ", " + flavour + ", " + failure);
        }
      }
    }
    assertEquals(List.of(), failures);
  }

  /** Students read it on A4, teachers on Letter. */
  private static byte[] written(NightBook book, Voice voice) throws IOException {
    ReportSettings settings =
        new ReportSettings(
            voice == Voice.STUDENT ? PageSize.A4 : PageSize.LETTER,
            voice,
            Optional.empty(),
            Entries.AUTO,
            FULL_ENTRIES,
            "0.1.0",
            Settings.shownDefaults());
    try (PdfPages pages = PdfPages.of(book, settings)) {
      return pages.bytes();
    }
  }

  private static List<String> failures(byte[] pdf, PDFAFlavour flavour) throws Exception {
    try (PDFAParser parser =
            Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), flavour);
        PDFAValidator validator = Foundries.defaultInstance().createValidator(flavour, false)) {
      ValidationResult result = validator.validate(parser);
      assertTrue(result.getTotalAssertions() > 1000, "something was checked");
      return result.getTestAssertions().stream()
          .filter(assertion -> assertion.getStatus() == TestAssertion.Status.FAILED)
          .map(failed -> failed.getRuleId().getClause() + ": " + failed.getMessage())
          .distinct()
          .limit(SHOWN)
          .toList();
    }
  }
}
