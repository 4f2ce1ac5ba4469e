package rondure.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/**
 * The sentences of a page, and how easy they are to read.
 *
 * <p>Reading ease is Flesch's: 206.835 − 1.015 words per sentence − 84.6 syllables per word (R.
 * Flesch, "A new readability yardstick", Journal of Applied Psychology 32, 1948, 221–233; 60 to 70
 * is "standard"). As he advised for texts with many figures, numbers and names of files are left
 * out of it; units are read out ("px" as "pixels", "%" as "per cent").
 */
final class Prose {
  private static final Set<String> BLOCKS =
      Set.of("p", "div", "td", "th", "h1", "h2", "h3", "li", "body", "dd", "dt", "caption");
  private static final Pattern SENTENCE_END = Pattern.compile("(?<=[.!?;][”)]?)\\s+(?=\\S)");
  private static final Pattern WORD = Pattern.compile("\\p{L}[\\p{L}'’]*(-\\p{L}[\\p{L}'’]*)*");
  private static final int LEAST_WORDS = 3;

  private final List<String> sentences;

  private Prose(List<String> sentences) {
    this.sentences = sentences;
  }

  /** Everything that is a sentence on a filled page: paragraphs, cells and spoken descriptions. */
  static Prose of(Element page) {
    List<String> blocks = new ArrayList<>();
    collect(page, blocks);
    return of(blocks);
  }

  /**
   * What ends like a sentence, each once whatever its numbers; labels, headings and names do not. A
   * semicolon ends one too, as Flesch counted.
   */
  static Prose of(List<String> blocks) {
    List<String> sentences = new ArrayList<>();
    for (String block : blocks) {
      for (String part : SENTENCE_END.split(block.strip().replaceAll("\\s+", " "))) {
        boolean ends = part.matches("(?s).*[.!?;][”)]?");
        if (ends && part.split(" ").length >= LEAST_WORDS) {
          sentences.add(part);
        }
      }
    }
    Map<String, String> once = new LinkedHashMap<>();
    sentences.forEach(sentence -> once.putIfAbsent(sentence.replaceAll("[\\d.,]+", "0"), sentence));
    return new Prose(List.copyOf(once.values()));
  }

  private static void collect(Element element, List<String> blocks) {
    StringBuilder own = new StringBuilder();
    gather(element, own, blocks);
    blocks.add(own.toString());
  }

  private static void gather(Element element, StringBuilder text, List<String> blocks) {
    NodeList children = element.getChildNodes();
    for (int i = 0; i < children.getLength(); i++) {
      Node child = children.item(i);
      if (child instanceof Element inner) {
        if (inner.hasAttribute("alt")) {
          blocks.add(inner.getAttribute("alt"));
        } else if (inner.getTagName().equals("br")) {
          text.append(' ');
        } else if (BLOCKS.contains(inner.getTagName())) {
          collect(inner, blocks);
        } else {
          gather(inner, text, blocks);
        }
      } else {
        text.append(child.getNodeValue() == null ? "" : child.getNodeValue());
      }
    }
  }

  List<String> sentences() {
    return sentences;
  }

  /** Words between spaces: numbers and names of files count. */
  static long length(String sentence) {
    return Arrays.stream(sentence.split("\\s+")).filter(w -> w.matches(".*[\\p{L}\\d].*")).count();
  }

  /** Flesch's reading ease over all sentences. */
  double readingEase() {
    long words = 0;
    long syllables = 0;
    for (String sentence : sentences) {
      for (String word : words(sentence)) {
        words++;
        syllables += syllables(word);
      }
    }
    return 206.835 - 1.015 * words / sentences.size() - 84.6 * syllables / words;
  }

  /** The words of a sentence as they are read out, without numbers and names of files. */
  static List<String> words(String sentence) {
    List<String> words = new ArrayList<>();
    for (String token : sentence.split("\\s+")) {
      String bare = token.replaceAll("^[^\\p{L}\\d%]+|[^\\p{L}\\d%]+$", "");
      if (bare.equals("%")) {
        words.addAll(List.of("per", "cent"));
      } else if (bare.equals("b/a")) {
        words.addAll(List.of("bee", "over", "ay"));
      } else if (WORD.matcher(bare).matches()) {
        words.add(bare.toLowerCase(Locale.ROOT));
      }
    }
    return words;
  }

  private static int syllables(String word) {
    return Arrays.stream(word.split("-"))
        .mapToInt(part -> Syllables.of(part.replaceAll("['’](s|t|re|ll)?$", "")))
        .sum();
  }
}
