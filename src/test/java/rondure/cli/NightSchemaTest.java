package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.sim.OutputFormat;
import rondure.testing.NightSchema;

/** What the whole command writes is what docs/ says that it writes. */
class NightSchemaTest {
  @TempDir static Path home;
  private static Path out;

  @BeforeAll
  static void realOutput() throws IOException {
    Path night = SmallNight.tiffs(home.resolve("night"), 3);
    SmallNight.copy(OutputFormat.JPEG, 3, night.resolve("night_3.jpg"));
    SmallNight.copy(OutputFormat.JPEG, 4, night.resolve("four.jpg"));
    Files.write(night.resolve("empty.tif"), new byte[0]);
    Files.writeString(night.resolve("clip.mov"), "moving");
    out = home.resolve("out");
    Run run = Run.report(out, "--star-table", night);
    assertEquals(1, run.code(), run.err());
  }

  @Test
  void theSchemaIsOneOfDraft202012() throws IOException {
    JsonNode text = NightSchema.text();
    assertEquals("https://json-schema.org/draft/2020-12/schema", text.get("$schema").asText());
    var meta =
        JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
            .getSchema(SchemaLocation.of(SpecVersion.VersionFlag.V202012.getId()));
    assertEquals(Set.of(), meta.validate(text));
    assertFalse(meta.validate(((ObjectNode) text.deepCopy()).put("type", 7)).isEmpty());
  }

  @Test
  void realOutputObeysItAndHoldsNoKeyThatItDoesNotDescribe() throws IOException {
    JsonNode night = Run.night(out);
    assertEquals(5, night.get("frames").size());
    assertEquals(Set.of(), NightSchema.closed().validate(night));
    ((ObjectNode) night.get("frames").get(0)).put("mood", "calm");
    assertEquals(1, NightSchema.closed().validate(night).size());
    assertEquals(Set.of(), NightSchema.published().validate(night));
  }

  @Test
  void everyKeyOfAFrameIsRequiredAndEveryKeyIsDescribed() throws IOException {
    JsonNode frame = NightSchema.text().get("$defs").get("frame");
    Set<String> required = new HashSet<>();
    frame.get("required").forEach(key -> required.add(key.asText()));
    Set<String> described = new HashSet<>();
    frame.get("properties").fieldNames().forEachRemaining(described::add);
    assertEquals(required, described);
    Set<String> written = new HashSet<>();
    Run.night(out).get("frames").get(0).fieldNames().forEachRemaining(written::add);
    assertEquals(written, described);
  }

  @Test
  void everyColumnOfTheTableIsExplained() throws IOException {
    String docs = Files.readString(Path.of("docs", "data-files.md"));
    String heading = Files.readAllLines(out.resolve("frames.csv")).get(0);
    List<String> columns = List.of(heading.split(","));
    assertTrue(columns.size() > 30, heading);
    List<String> missing =
        columns.stream().filter(column -> !docs.contains("`" + column + "`")).toList();
    assertEquals(List.of(), missing);
  }

  @Test
  void everyOptionForSidecarsIsInTheHelpAndInTheReadme() throws IOException {
    String readme = Files.readString(Path.of("README.md"));
    String help = Run.of("report", "--help").out();
    for (String option :
        List.of("--sidecars", "--sidecars-beside", "--replace-ratings", "--dry-run")) {
      assertTrue(readme.contains("`" + option + "`"), option);
      assertTrue(help.contains("  " + option + " "), option);
    }
  }
}
