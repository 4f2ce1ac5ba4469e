package rondure.base;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** A small picture as JPEG bytes without any metadata, in display orientation. */
public final class JpegPicture {
  private final byte[] bytes;

  @JsonCreator
  public JpegPicture(byte[] bytes) {
    this.bytes = bytes.clone();
  }

  @JsonValue
  public byte[] bytes() {
    return bytes.clone();
  }
}
