package rondure.base;

/** Text for people, made from names that come from anywhere. */
public final class PlainText {
  /** Marks and overrides of writing direction (Unicode Standard Annex 9, section 2). */
  private static final String DIRECTIONS = "\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069";

  /** Controls, halves of characters, line ends of Unicode, and marks of direction. */
  private static final String ACTING = "[\\p{Cc}\\p{Cs}\\p{Zl}\\p{Zp}" + DIRECTIONS + "]";

  private PlainText() {}

  /** One line with a question mark for every character that could act on a terminal or a list. */
  public static String inert(String text) {
    return text.replaceAll(ACTING, "?");
  }
}
