package rondure.report;

import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Counts the syllables of English words by their spelling; {@code SyllablesTest} holds it against a
 * dictionary of pronunciations.
 */
final class Syllables {
  private static final Pattern VOWELS = Pattern.compile("[aeiouy]+");

  /** Vowels side by side that are spoken apart. */
  private static final Pattern APART =
      Pattern.compile(
          "(?<![cstgxr])i[ao](?!us)|ria|rio|bio|^ratio|stereo|geo|video|[^cg]eou|(?<![qg])ua[lt]"
              + "|(?<![qgb])ui(?!d)(?=n[gt])|uou|[aeo]ing|[^aeiou]ying|creat(?!u)|area|idea|linear"
              + "|[^aeiou]ier$|ience|iu|ism$|rhythm|(?<=[^aeiou])ia$|poet|quiet|ieth$|ayer");

  /** Written and not spoken: "e" at the end of a word, in -ed and in -es. */
  private static final Pattern SILENT =
      Pattern.compile(
          ".*(([^aeiouyl]|[aeiouy]l|rl)e|([^aeiouytdl]|[aeiouy]ll?|rl)ed"
              + "|([^aeiouylcgszxh]|[aeiouy]l|rl|th|ph)es)");

  /** Parts behind an "e" that is not spoken, as in "measurement". */
  private static final List<String> PARTS =
      List.of(
          "ments", "ment", "ness", "less", "fully", "ful", "ly", "thing", "where", "one", "side",
          "out", "wise", "times");

  /** As people say them. */
  private static final Map<String, Integer> IRREGULAR =
      Map.ofEntries(
          Map.entry("centre", 2),
          Map.entry("centres", 2),
          Map.entry("millimetres", 4),
          Map.entry("hour", 2),
          Map.entry("hours", 2),
          Map.entry("our", 2),
          Map.entry("several", 2),
          Map.entry("everything", 3),
          Map.entry("everywhere", 3),
          Map.entry("differently", 3),
          Map.entry("temperature", 3),
          Map.entry("elements", 3),
          Map.entry("element", 3),
          Map.entry("beyond", 2),
          Map.entry("px", 2),
          Map.entry("mm", 4),
          Map.entry("fwhm", 6),
          Map.entry("jpeg", 2),
          Map.entry("iso", 2),
          Map.entry("dng", 3),
          Map.entry("npf", 3),
          Map.entry("json", 2),
          Map.entry("csv", 3));

  private Syllables() {}

  /** Of a word in small letters a to z; at least 1. */
  static int of(String word) {
    Integer said = IRREGULAR.get(word);
    if (said != null) {
      return said;
    }
    for (String part : PARTS) {
      int before = word.length() - part.length();
      if (before > 2 && word.endsWith(part) && word.charAt(before - 1) == 'e') {
        return ofPart(word.substring(0, before)) + ofPart(part);
      }
    }
    return ofPart(word);
  }

  private static int ofPart(String part) {
    int count = matches(VOWELS, part.startsWith("y") ? part.substring(1) : part);
    count += matches(APART, part);
    count -= SILENT.matcher(part).matches() ? 1 : 0;
    return Math.max(1, count);
  }

  private static int matches(Pattern pattern, String text) {
    Matcher matcher = pattern.matcher(text);
    int count = 0;
    while (matcher.find()) {
      count++;
    }
    return count;
  }
}
