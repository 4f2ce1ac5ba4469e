package rondure.report;

import java.math.BigDecimal;

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
    return value instanceof Double number && Double.isFinite(number)
        ? BigDecimal.valueOf(number).stripTrailingZeros().toPlainString()
        : String.valueOf(value);
  }
}
