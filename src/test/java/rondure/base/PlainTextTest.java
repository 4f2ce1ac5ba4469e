package rondure.base;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PlainTextTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "frame 1.tif",
        "\u00E9toil\u00E9e",
        "\u05DC\u05D9\u05DC\u05D4",
        "\uD83C\uDF0C",
        "\uD83D\uDC68\u200D\uD83D\uDE80"
      })
  void lettersOfAnyScriptAndJoinedEmojiStay(String name) {
    assertEquals(name, PlainText.inert(name));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "\u0000", "\n", "\r", "\t", "\u001B", "\u007F", "\u009B", "\u2028", "\u2029", "\u202E",
        "\u2066", "\u200F", "\u061C"
      })
  void whatActsOnATerminalIsAQuestionMark(String acting) {
    assertEquals("a?b", PlainText.inert("a" + acting + "b"));
  }

  @Test
  void halfACharacterIsAQuestionMark() {
    assertEquals("a?b", PlainText.inert("a\uD83Cb"));
  }
}
