package rondure.report.picture;

import java.util.Map;

/** The words written into drawings; they live with the report's other words. */
@FunctionalInterface
public interface PictureWords {

  /**
   * @param key which words
   * @param values fill the blanks, by name
   */
  String say(String key, Map<String, String> values);

  /** Words without blanks. */
  default String say(String key) {
    return say(key, Map.of());
  }
}
