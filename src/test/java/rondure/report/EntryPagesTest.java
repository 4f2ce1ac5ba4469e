package rondure.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import rondure.blur.Evidence;
import rondure.blur.Verdict;
import rondure.night.NightBook;
import rondure.night.NightFrame;
import rondure.report.ReportSettings.Entries;
import rondure.report.ReportSettings.PageSize;
import rondure.report.ReportSettings.Voice;

/** Entries stand two to a page, on either paper, in either wording, level or upright. */
class EntryPagesTest {
  private static final int ENTRIES = 20;

  static Stream<Arguments> reports() {
    return Stream.of(PageSize.values())
        .flatMap(
            paper ->
                Stream.of(Voice.values())
                    .flatMap(
                        voice ->
                            Stream.of(true, false)
                                .map(upright -> Arguments.of(paper, voice, upright))));
  }

  /** Twenty measured frames of all causes, each with as much evidence as real ones have. */
  private static NightBook book(boolean upright) {
    List<NightFrame> frames =
        BookFixture.night(23, upright).frames().stream()
            .filter(Ranking::isMeasured)
            .map(EntryPagesTest::withMoreEvidence)
            .toList();
    return BookFixture.book("Hollow Ridge", frames);
  }

  private static NightFrame withMoreEvidence(NightFrame frame) {
    Verdict verdict = frame.verdict().orElseThrow();
    List<Evidence> evidence = new ArrayList<>(verdict.evidence());
    evidence.add(
        new Evidence(Evidence.Kind.SMEAR_BEYOND_SKY, Map.of("angleDeg", 24.0, "smearPx2", 1.31)));
    evidence.add(
        new Evidence(Evidence.Kind.SKY_REGISTERED, Map.of("frameCount", 20.0, "trailPx", 2.9)));
    evidence.add(new Evidence(Evidence.Kind.CAMERA_JUMPED, Map.of("jumpPx", 9.6)));
    return BookFixture.withVerdict(
        frame,
        new Verdict(
            verdict.cause(), verdict.probabilities(), verdict.undecidedBetween(), evidence));
  }

  @ParameterizedTest
  @MethodSource("reports")
  void twentyEntriesTakeElevenPages(PageSize paper, Voice voice, boolean upright)
      throws IOException {
    NightBook book = book(upright);
    assertEquals(ENTRIES, book.frames().size());
    ReportSettings settings =
        new ReportSettings(paper, voice, Optional.empty(), Entries.ALL, 60, "0.1.0", List.of());
    try (PdfPages pages = PdfPages.of(book, settings)) {
      int first = 0;
      int last = 0;
      for (int page = 1; page <= pages.document().getNumberOfPages(); page++) {
        String text = text(pages, page);
        if (text.contains("stars measured")) {
          first = first == 0 ? page : first;
          last = page;
        }
      }
      int used = last - first + 1;
      assertTrue(used <= 11, paper + ", " + voice + ": " + used + " pages");
      String start = text(pages, first);
      assertTrue(start.contains("How to read the pictures of a frame"), start);
    }
  }

  private static String text(PdfPages pages, int page) throws IOException {
    PDFTextStripper stripper = new PDFTextStripper();
    stripper.setStartPage(page);
    stripper.setEndPage(page);
    return stripper.getText(pages.document());
  }
}
