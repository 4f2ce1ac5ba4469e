package rondure.report;

import rondure.report.layout.Wording;

/**
 * One thing to do next time.
 *
 * @param action what to do
 * @param reason what of this night speaks for it, may be empty
 */
record AdvicePoint(String action, String reason) {

  /** The words of a key, and those of the same key with {@code .why} where there are any. */
  static AdvicePoint of(Wording words, String key, String... values) {
    String why = key + ".why";
    return new AdvicePoint(words.say(key, values), words.has(why) ? words.say(why, values) : "");
  }

  /** The same with more behind its reason. */
  AdvicePoint because(String more) {
    return new AdvicePoint(action, (reason + " " + more).strip());
  }
}
