package rondure.report.layout;

import java.awt.Font;
import java.text.Bidi;
import java.text.Normalizer;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import rondure.report.picture.ReportFonts;

/** Keeps to characters the fonts can draw; others are printed as U+XXXX. */
public final class Glyphs {
  private static final Pattern OPTION = Pattern.compile("(?<![\\w-])\\(?--[a-z][a-z0-9-]*[).,]*");

  private Glyphs() {}

  /**
   * The text with every character that would not print, or would print misleadingly, as U+XXXX:
   * missing glyphs, control and formatting characters. Spaces of every kind become plain spaces.
   */
  public static String printable(String text) {
    String composed = Normalizer.normalize(text, Normalizer.Form.NFC);
    if (composed.chars().allMatch(c -> c >= 0x20 && c < 0x7F)) {
      return composed;
    }
    Font font = ReportFonts.Face.SANS_REGULAR.font();
    StringBuilder printed = new StringBuilder(composed.length());
    composed.codePoints().forEach(c -> append(printed, c, font));
    return printed.toString();
  }

  private static void append(StringBuilder printed, int codePoint, Font font) {
    if (codePoint == '\n' || codePoint == '\t' || codePoint == '\r') {
      printed.append(' ');
    } else if (codePoint != 0xA0 && Character.isSpaceChar(codePoint)) {
      printed.append(' ');
    } else if (codePoint == 0xA0 || isDrawn(codePoint, font)) {
      printed.appendCodePoint(codePoint);
    } else {
      printed.append(String.format(Locale.ROOT, "U+%04X", codePoint));
    }
  }

  private static boolean isDrawn(int codePoint, Font font) {
    int type = Character.getType(codePoint);
    return font.canDisplay(codePoint)
        && type != Character.CONTROL
        && type != Character.FORMAT
        && type != Character.PRIVATE_USE;
  }

  /**
   * The text in the order in which its characters stand on a line set from left to right: letters
   * of right-to-left scripts turned about, numbers and Latin words inside them not (Unicode Annex
   * 9).
   */
  static String visual(String text) {
    char[] all = text.toCharArray();
    if (!Bidi.requiresBidi(all, 0, all.length)) {
      return text;
    }
    Bidi bidi = new Bidi(text, Bidi.DIRECTION_LEFT_TO_RIGHT);
    byte[] levels = new byte[bidi.getRunCount()];
    String[] runs = new String[levels.length];
    for (int i = 0; i < levels.length; i++) {
      levels[i] = (byte) bidi.getRunLevel(i);
      String run = text.substring(bidi.getRunStart(i), bidi.getRunLimit(i));
      runs[i] = levels[i] % 2 == 0 ? run : mirrored(run);
    }
    Bidi.reorderVisually(levels, 0, runs, 0, runs.length);
    return String.join("", runs);
  }

  private static String mirrored(String run) {
    StringBuilder turned = new StringBuilder(run).reverse();
    for (int i = 0; i < turned.length(); i++) {
      int pair = "()[]{}<>".indexOf(turned.charAt(i));
      if (pair >= 0) {
        turned.setCharAt(i, "()[]{}<>".charAt(pair ^ 1));
      }
    }
    return turned.toString();
  }

  /** The text with characters that XML cannot hold (controls, half surrogates) as U+XXXX. */
  static String legible(String text) {
    StringBuilder legible = new StringBuilder(text.length());
    text.codePoints()
        .forEach(
            c -> {
              boolean allowed =
                  c == '\t' || c == '\n' || c >= 0x20 && c < 0xD800 || c >= 0xE000 && c < 0xFFFE;
              if (allowed || c >= 0x10000) {
                legible.appendCodePoint(c);
              } else {
                legible.append(String.format(Locale.ROOT, "U+%04X", c));
              }
            });
    return legible.toString();
  }

  /** Options of the command line are not broken at their hyphens: one would not be seen. */
  private static void keepOptionsWhole(Node text) {
    String all = text.getNodeValue();
    Matcher options = OPTION.matcher(all);
    int done = 0;
    while (options.find()) {
      Document document = text.getOwnerDocument();
      Element whole = document.createElement("span");
      whole.setAttribute("style", "white-space: nowrap");
      whole.setTextContent(options.group());
      Node before = document.createTextNode(all.substring(done, options.start()));
      text.getParentNode().insertBefore(before, text);
      text.getParentNode().insertBefore(whole, text);
      done = options.end();
    }
    text.setNodeValue(all.substring(done));
  }

  /** Makes every text of the document printable. */
  static void clean(Document document) {
    clean(document.getDocumentElement());
  }

  private static void clean(Node node) {
    for (Node child = node.getFirstChild(); child != null; child = child.getNextSibling()) {
      if (child.getNodeType() == Node.TEXT_NODE && !node.getNodeName().equals("style")) {
        child.setNodeValue(visual(printable(child.getNodeValue())));
        keepOptionsWhole(child);
      } else {
        clean(child);
      }
    }
  }
}
