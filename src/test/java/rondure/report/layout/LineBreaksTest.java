package rondure.report.layout;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.text.BreakIterator;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class LineBreaksTest {
  private static List<String> pieces(String text) {
    LineBreaks breaks = new LineBreaks();
    breaks.setText(text);
    List<String> pieces = new ArrayList<>();
    int from = 0;
    for (int to = breaks.next(); to != BreakIterator.DONE; to = breaks.next()) {
      if (to > from) {
        pieces.add(text.substring(from, to));
        from = to;
      }
    }
    pieces.add(text.substring(from));
    pieces.removeIf(String::isEmpty);
    return pieces;
  }

  @Test
  void aSymbolWithASlashStaysOnOneLine() {
    assertEquals(List.of("with ", "b/a ", "0.86"), pieces("with b/a 0.86"));
    assertEquals(List.of("sure, ", "62 %"), pieces("sure, 62 %"));
    assertEquals(List.of("13 ", "s, ", "f/2.8"), pieces("13 s, f/2.8"));
  }

  @Test
  void aPathStillBreaksAtItsSlashes() {
    assertEquals(List.of("night", "/frame"), pieces("night/frame"));
  }
}
