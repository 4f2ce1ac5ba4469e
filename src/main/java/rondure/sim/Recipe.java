package rondure.sim;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** Plans and truths as JSON. A key nobody knows is refused, so that a slip of the pen is seen. */
public final class Recipe {
  private static final ObjectMapper MAPPER =
      JsonMapper.builder()
          .addModule(new Jdk8Module())
          .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .defaultPropertyInclusion(
              JsonInclude.Value.construct(
                  JsonInclude.Include.NON_ABSENT, JsonInclude.Include.NON_ABSENT))
          .build();

  private Recipe() {}

  /**
   * The plan in a recipe file.
   *
   * @throws IOException with one clear sentence when the file cannot be read or is no plan
   */
  public static NightPlan read(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      return read(in, file.toString());
    }
  }

  /** The plan in a stream; {@code name} is used in messages. */
  static NightPlan read(InputStream in, String name) throws IOException {
    try {
      return MAPPER.readValue(in, NightPlan.class);
    } catch (JsonProcessingException e) {
      throw new IOException("the recipe " + name + " cannot be used: " + reason(e), e);
    }
  }

  /** The plan as indented JSON. */
  public static String toJson(NightPlan plan) throws IOException {
    return MAPPER.writer(SerializationFeature.INDENT_OUTPUT).writeValueAsString(plan) + "\n";
  }

  /** The truth as compact JSON bytes. */
  static byte[] toJson(NightTruth truth) throws IOException {
    return MAPPER.writeValueAsBytes(truth);
  }

  private static String reason(JsonProcessingException e) {
    Throwable cause = e.getCause();
    boolean refused = cause instanceof IllegalArgumentException;
    boolean missing = cause instanceof NullPointerException;
    String what = refused ? cause.getMessage() : missing ? cause.getMessage() + " is missing" : "";
    return what.isEmpty() ? e.getOriginalMessage() : what;
  }
}
