package rondure.crew;

import com.fasterxml.jackson.annotation.JsonAutoDetect.Visibility;
import com.fasterxml.jackson.annotation.PropertyAccessor;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonDeserializer;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.io.IOException;
import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;

/**
 * Records as JSON and back, exactly: doubles bit for bit, times to the nanosecond. A value that is
 * not a finite number is refused when written, with its place in the record.
 */
public final class RecordJson {
  private static final ObjectMapper MAPPER =
      JsonMapper.builder()
          .addModule(new Jdk8Module())
          .addModule(ownTypes())
          .visibility(PropertyAccessor.IS_GETTER, Visibility.NONE)
          .enable(StreamReadFeature.USE_FAST_DOUBLE_PARSER)
          .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS)
          .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .enable(DeserializationFeature.FAIL_ON_NULL_CREATOR_PROPERTIES)
          .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
          .build();

  private RecordJson() {}

  /**
   * Writes a record; equal records give equal bytes.
   *
   * @throws IOException when the record holds a value that is not finite
   */
  public static byte[] write(Object value) throws IOException {
    return MAPPER.writeValueAsBytes(value);
  }

  /**
   * Reads what was written.
   *
   * @throws IOException when the bytes are not such a record, whole and with sensible values
   */
  public static <T> T read(byte[] json, Class<T> type) throws IOException {
    return MAPPER.readValue(json, type);
  }

  private static SimpleModule ownTypes() {
    return new SimpleModule("rondure-crew")
        .addSerializer(Double.class, new FiniteDouble())
        .addSerializer(Double.TYPE, new FiniteDouble())
        .addSerializer(LocalDateTime.class, new TimeWriter())
        .addDeserializer(LocalDateTime.class, new TimeReader());
  }

  private static final class FiniteDouble extends JsonSerializer<Double> {
    @Override
    public void serialize(Double value, JsonGenerator out, SerializerProvider provider)
        throws IOException {
      if (!Double.isFinite(value)) {
        throw JsonMappingException.from(out, "not a finite number: " + value);
      }
      out.writeNumber(value);
    }
  }

  private static final class TimeWriter extends JsonSerializer<LocalDateTime> {
    @Override
    public void serialize(LocalDateTime value, JsonGenerator out, SerializerProvider provider)
        throws IOException {
      out.writeString(value.toString());
    }
  }

  private static final class TimeReader extends JsonDeserializer<LocalDateTime> {
    @Override
    public LocalDateTime deserialize(JsonParser in, DeserializationContext context)
        throws IOException {
      try {
        return LocalDateTime.parse(in.getText());
      } catch (DateTimeParseException e) {
        throw JsonMappingException.from(in, "not a time: " + e.getMessage(), e);
      }
    }
  }
}
