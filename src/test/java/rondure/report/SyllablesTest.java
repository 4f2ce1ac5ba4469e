package rondure.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * The counting of syllables and words that judges whether the report is plain, against the
 * Pronouncing Dictionary of Carnegie Mellon University (vowels with stress marks in the first
 * pronunciation) and against worked examples.
 */
class SyllablesTest {
  private static List<String[]> dictionary() throws IOException {
    List<String[]> entries = new ArrayList<>();
    try (var stream = SyllablesTest.class.getResourceAsStream("/syllables-cmu.txt")) {
      String text = new String(stream.readAllBytes(), StandardCharsets.UTF_8);
      text.lines().filter(l -> !l.startsWith("#")).forEach(l -> entries.add(l.split(" ")));
    }
    return entries;
  }

  @Test
  void syllablesAreThoseOfADictionary() throws IOException {
    List<String[]> entries = dictionary();
    List<String> other = new ArrayList<>();
    int counted = 0;
    int told = 0;
    for (String[] entry : entries) {
      int own = Syllables.of(entry[0]);
      counted += own;
      told += Integer.parseInt(entry[1]);
      if (own != Integer.parseInt(entry[1])) {
        other.add(entry[0] + " " + own);
      }
    }
    assertTrue(entries.size() > 1200, entries.size() + " words");
    assertTrue(other.size() <= 0.02 * entries.size(), other.toString());
    // 1 % of the syllables is about one point of reading ease
    assertEquals(told, counted, 0.01 * told);
  }

  /** "The cat sat on the mat" scores 116.145: one sentence, six words, six syllables. */
  @Test
  void theFormulaGivesAWorkedExample() {
    assertEquals(116.145, Prose.of(List.of("The cat sat on the mat.")).readingEase(), 1e-9);
  }

  @Test
  void numbersAndNamesOfFilesAreWordsOfASentence() {
    assertEquals(8, Prose.length("In 15 s the sky draws 4.5 px."));
    assertEquals(5, Prose.length("night_0004.tif is the best frame."));
    assertEquals(
        List.of("in", "s", "the", "sky", "draws", "px"),
        Prose.words("In 15 s the sky draws 4.5 px."));
  }
}
