package rondure.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rondure.blur.Evidence;
import rondure.blur.Verdict;
import rondure.night.Grade;
import rondure.night.NightBook;
import rondure.night.Scene;
import rondure.testing.NightSchema;

class DataFilesTest {
  private static final List<ShownSetting> SETTINGS =
      List.of(new ShownSetting("meshPx", "64", "Side of a mesh cell."));

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 12, 60})
  void nightJsonObeysItsSchema(int frames) throws IOException {
    JsonNode night = new ObjectMapper().readTree(json(BookFixture.night(frames)));
    assertEquals(Set.of(), NightSchema.closed().validate(night));
    assertEquals(frames, night.get("frames").size());
  }

  @Test
  void theSchemaRefusesAnUnknownCauseAndAMissingKey() throws IOException {
    JsonNode night = new ObjectMapper().readTree(json(BookFixture.night(1)));
    var frame = (com.fasterxml.jackson.databind.node.ObjectNode) night.get("frames").get(0);
    frame.put("cause", "gremlins");
    frame.remove("fwhmPx");
    assertTrue(NightSchema.published().validate(night).size() >= 2);
  }

  /** What a verdict rests on is there as numbers, from which sentences are made elsewhere. */
  @Test
  void everyVerdictCarriesItsEvidenceAsData() throws IOException {
    NightBook book = BookFixture.night(12);
    JsonNode night = new ObjectMapper().readTree(json(book));
    int seen = 0;
    for (int i = 0; i < book.frames().size(); i++) {
      List<Evidence> evidence =
          book.frames().get(i).verdict().map(Verdict::evidence).orElse(List.of());
      JsonNode written = night.get("frames").get(i).get("evidence");
      assertEquals(evidence.size(), written.size());
      for (int k = 0; k < evidence.size(); k++) {
        JsonNode values = written.get(k).get("values");
        assertEquals(evidence.get(k).values().size(), values.size());
        evidence
            .get(k)
            .values()
            .forEach((name, value) -> assertEquals(value, values.get(name).doubleValue(), 1e-3));
        seen++;
      }
    }
    assertTrue(seen > 10, "evidence of " + seen + " kinds");
  }

  /** The best of a scene has rank 1, and the best of each group of frames alike is one of them. */
  @Test
  void ranksAndGroupsStandInBothFiles() throws IOException {
    NightBook book = BookFixture.night(22);
    JsonNode frames = new ObjectMapper().readTree(json(book)).get("frames");
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    FramesCsv.write(book, out);
    String[] lines = out.toString(StandardCharsets.UTF_8).split("\r\n");
    List<String> heads = List.of(lines[0].split(","));
    java.util.Map<Integer, Integer> bests = new java.util.TreeMap<>();
    for (int i = 0; i < frames.size(); i++) {
      JsonNode frame = frames.get(i);
      assertEquals(frame.get("fwhmPx").isNull(), frame.get("rankInScene").isNull());
      assertEquals(frame.get("alikeGroup").isNull(), frame.get("bestOfAlike").isNull());
      bests.merge(
          frame.get("alikeGroup").asInt(),
          frame.get("bestOfAlike").asBoolean() ? 1 : 0,
          Integer::sum);
      if (i % 5 == 0 && !lines[i + 1].contains("\"")) {
        String[] row = lines[i + 1].split(",", -1);
        assertEquals(text(frame.get("rankInScene")), row[heads.indexOf("rank_in_scene")]);
        assertEquals(text(frame.get("alikeGroup")), row[heads.indexOf("alike_group")]);
        assertEquals(text(frame.get("bestOfAlike")), row[heads.indexOf("best_of_alike")]);
      }
    }
    assertEquals(0, bests.remove(0), "frames outside groups are the best of none");
    assertTrue(bests.size() > 1 && bests.values().stream().allMatch(n -> n == 1), "" + bests);
    for (Scene scene : book.scenes()) {
      int best = book.frames().indexOf(Ranking.bestFirst(book, scene).get(0));
      assertEquals(1, frames.get(best).get("rankInScene").asInt());
    }
  }

  private static String text(JsonNode value) {
    return value.isNull() ? "" : value.asText();
  }

  @Test
  void theSameBookGivesTheSameBytes() throws IOException {
    NightBook book = BookFixture.night(12);
    assertArrayEquals(json(book), json(book));
  }

  @Test
  void theTableHasARowForEachFrameAndUnitsInTheHeadings() throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    FramesCsv.write(BookFixture.night(12), out);
    List<String> lines = List.of(out.toString(StandardCharsets.UTF_8).split("\r\n"));
    assertEquals(13, lines.size());
    assertTrue(lines.get(0).contains("fwhm_px") && lines.get(0).contains("exposure_s"));
  }

  @Test
  void textThatASpreadsheetWouldRunIsMadeInert() {
    assertEquals("'=1+1", FramesCsv.inert("=1+1"));
    assertEquals("IMG_1.tif", FramesCsv.inert("IMG_1.tif"));
  }

  @Test
  void theKeepListNamesEveryKeptFrameAndItsCopiesOnly() throws IOException {
    NightBook book = BookFixture.night(60);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    KeepList.write(book, out);
    List<String> expected =
        book.frames().stream()
            .filter(frame -> frame.grade().equals(Optional.of(Grade.KEEP)))
            .flatMap(
                frame ->
                    java.util.stream.Stream.concat(
                        java.util.stream.Stream.of(frame.file()), frame.copies().stream()))
            .toList();
    assertTrue(!expected.isEmpty());
    assertEquals(expected, out.toString(StandardCharsets.UTF_8).lines().toList());
  }

  private static byte[] json(NightBook book) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    NightJson.write(book, "0.0.0", SETTINGS, out);
    return out.toByteArray();
  }
}
