package rondure.crew;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class WireTest {

  @Property(tries = 200)
  void messagesComeBackOneAfterTheOther(@ForAll byte[] first, @ForAll byte[] second)
      throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Wire.write(out, first);
    Wire.write(out, second);
    ByteArrayInputStream in = new ByteArrayInputStream(out.toByteArray());
    assertArrayEquals(first, Wire.read(in));
    assertArrayEquals(second, Wire.read(in));
    assertThrows(EOFException.class, () -> Wire.read(in));
  }

  @Property(tries = 200)
  void anyChangedByteIsNoticed(
      @ForAll @Size(min = 1, max = 50) byte[] payload,
      @ForAll @IntRange(max = 61) int place,
      @ForAll @IntRange(min = 1, max = 255) int change)
      throws IOException {
    byte[] message = message(payload);
    message[place % message.length] ^= (byte) change;
    assertThrows(IOException.class, () -> Wire.read(new ByteArrayInputStream(message)));
  }

  @Property(tries = 100)
  void aCutMessageIsAnEndNotAMessage(
      @ForAll byte[] payload, @ForAll @IntRange(max = 1000) int place) throws IOException {
    byte[] message = message(payload);
    byte[] cut = Arrays.copyOf(message, place % message.length);
    assertThrows(EOFException.class, () -> Wire.read(new ByteArrayInputStream(cut)));
  }

  @Test
  void textOnThePipeIsNotAMessage() {
    byte[] text = "Warning: unexpected end of file\n".getBytes(StandardCharsets.US_ASCII);
    assertThrows(Wire.Garbled.class, () -> Wire.read(new ByteArrayInputStream(text)));
  }

  private static byte[] message(byte[] payload) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Wire.write(out, payload);
    return out.toByteArray();
  }
}
