package rondure.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rondure.night.NightBook;
import rondure.night.NightFrame;

/** A night that was measured, but that a fault of the program left without causes. */
class UnexplainedNightTest {
  private static final NightBook BOOK =
      BookFixture.book(
          "ridge",
          BookFixture.night(12).frames().stream()
              .filter(Ranking::isMeasured)
              .limit(3)
              .map(UnexplainedNightTest::unexplained)
              .toList());

  private static NightFrame unexplained(NightFrame frame) {
    return new NightFrame(
        frame.file(),
        frame.copies(),
        frame.cameraName(),
        frame.sceneNumber(),
        frame.nightIndex(),
        frame.facts(),
        frame.status(),
        Optional.of("measured only"),
        frame.trailPredictedPx(),
        frame.shape(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        frame.usefulness(),
        Optional.empty(),
        frame.measurement());
  }

  @Test
  void theReportBlamesNothingAndPraisesNothing() throws IOException {
    try (PdfPages pages = PdfPages.of(BOOK)) {
      String text = pages.text().replaceAll("\\s+", " ");
      assertTrue(text.contains("The cause was not found: a fault of this program"), text);
      assertTrue(text.contains("why the soft ones are soft was not found"), text);
      for (String word : List.of("Likely cause", "Undecided", "Nothing else softened", "Do the")) {
        assertFalse(text.contains(word), word);
      }
    }
  }

  @Test
  void theDataHaveTheMeasurementAndNoCause() throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    NightJson.write(BOOK, "0.0.0", List.of(), out);
    JsonNode night = new ObjectMapper().readTree(out.toByteArray());
    assertEquals(
        Set.of(),
        JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
            .getSchema(Files.readString(Path.of("docs", "night.schema.json")))
            .validate(night));
    JsonNode frame = night.get("frames").get(0);
    assertTrue(frame.get("cause").isNull() && frame.get("fwhmPx").isNumber());
    assertEquals("measured only", frame.get("reason").textValue());
  }

  @Test
  void theLogSaysSoOfEveryFrame() throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    RunLog.write(BOOK, "0.0.0", List.of(), out);
    String log = out.toString(StandardCharsets.UTF_8);
    assertEquals(3, log.lines().filter(line -> line.endsWith("measured only")).count(), log);
  }
}
