package rondure.report;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

/** Judged by veraPDF against ISO 14289-1 (PDF/UA-1). */
class PdfAccessibilityTest {
  @BeforeAll
  static void prepare() {
    VeraGreenfieldFoundryProvider.initialise();
  }

  @Test
  void theReportIsPdfUa1() throws Exception {
    try (PdfPages pages = PdfPages.of(BookFixture.night(12))) {
      ValidationResult result = validated(pages.bytes());
      List<String> failures =
          result.getTestAssertions().stream()
              .filter(assertion -> assertion.getStatus() == TestAssertion.Status.FAILED)
              .map(failed -> failed.getRuleId().getClause() + ": " + failed.getMessage())
              .distinct()
              .limit(10)
              .toList();
      assertTrue(result.isCompliant(), failures.toString());
      assertTrue(result.getTotalAssertions() > 1000, "something was checked");
    }
  }

  private static ValidationResult validated(byte[] pdf) throws Exception {
    try (PDFAParser parser =
            Foundries.defaultInstance()
                .createParser(new ByteArrayInputStream(pdf), PDFAFlavour.PDFUA_1);
        PDFAValidator validator =
            Foundries.defaultInstance().createValidator(PDFAFlavour.PDFUA_1, false)) {
      return validator.validate(parser);
    }
  }
}
