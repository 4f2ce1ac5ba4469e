package rondure.base;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.nio.ByteBuffer;
import java.util.Base64;

/** A small square picture of light, row-major, frozen; written as base64 of big-endian floats. */
public final class Stamp {
  private final int sidePx;
  private final float[] values;

  public Stamp(int sidePx, float[] values) {
    if (sidePx <= 0 || values.length != sidePx * sidePx) {
      throw new IllegalArgumentException(
          values.length + " values do not make a square of " + sidePx);
    }
    this.sidePx = sidePx;
    this.values = values.clone();
  }

  @JsonCreator
  static Stamp read(@JsonProperty("sidePx") int sidePx, @JsonProperty("data") String data) {
    ByteBuffer bytes = ByteBuffer.wrap(Base64.getDecoder().decode(data));
    float[] values = new float[bytes.remaining() / Float.BYTES];
    bytes.asFloatBuffer().get(values);
    return new Stamp(sidePx, values);
  }

  @JsonProperty("sidePx")
  public int sidePx() {
    return sidePx;
  }

  @JsonProperty("data")
  String data() {
    ByteBuffer bytes = ByteBuffer.allocate(values.length * Float.BYTES);
    bytes.asFloatBuffer().put(values);
    return Base64.getEncoder().encodeToString(bytes.array());
  }

  public float at(int x, int y) {
    return values[y * sidePx + x];
  }
}
