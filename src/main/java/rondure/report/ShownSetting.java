package rondure.report;

/**
 * One setting of the run as the report and night.json show it.
 *
 * @param name key in night.json
 * @param value as text
 * @param meaning what it buys, one plain sentence
 */
public record ShownSetting(String name, String value, String meaning) {

  /** A value as it is shown: whole numbers without a decimal point. */
  public static String spelled(Object value) {
    return String.valueOf(value).replaceFirst("\\.0$", "");
  }
}
