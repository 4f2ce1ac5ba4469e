package rondure.testing;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The schema of night.json, JSON Schema draft 2020-12. */
public final class NightSchema {
  private static final Path FILE = Path.of("docs", "night.schema.json");

  private NightSchema() {}

  /** The schema's own text. */
  public static JsonNode text() throws IOException {
    return new ObjectMapper().readTree(Files.readString(FILE));
  }

  /** As it is published: later versions may add keys. */
  public static JsonSchema published() throws IOException {
    return schema(text());
  }

  /** The same, but a key that it does not describe is an error: so that it stays complete. */
  public static JsonSchema closed() throws IOException {
    JsonNode text = text();
    close(text);
    return schema(text);
  }

  private static JsonSchema schema(JsonNode text) {
    return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(text);
  }

  private static void close(JsonNode node) {
    if (node instanceof ObjectNode object
        && object.path("properties").isObject()
        && object.path("type").toString().contains("object")
        && !object.has("additionalProperties")) {
      object.put("additionalProperties", false);
    }
    node.forEach(NightSchema::close);
  }
}
