package rondure.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import org.junit.jupiter.api.Test;

class RoundedTest {
  @Test
  void sixSignificantDigits() {
    assertEquals("2.34568", Rounded.of(2.3456789).orElseThrow().toPlainString());
    assertEquals("123457", Rounded.of(123456.7).orElseThrow().toPlainString());
    assertEquals("12345700", Rounded.of(12345678.9).orElseThrow().toPlainString());
    assertEquals("0", Rounded.of(-0.0).orElseThrow().toPlainString());
  }

  @Test
  void whatIsNotANumberIsNotWritten() {
    assertEquals(Optional.empty(), Rounded.of(Double.NaN));
    assertEquals(Optional.empty(), Rounded.of(Double.POSITIVE_INFINITY));
  }
}
