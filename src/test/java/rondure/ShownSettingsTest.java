package rondure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.RecordComponent;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import rondure.night.NightSettings;
import rondure.report.ShownSetting;

/** Every threshold of nights, grades, uses and events stands in night.json and the report. */
class ShownSettingsTest {
  private static final Map<String, ShownSetting> SHOWN =
      Settings.shownDefaults().stream().collect(Collectors.toMap(ShownSetting::name, s -> s));

  private static int check(Class<?> settings) {
    int checked = 0;
    for (RecordComponent component : settings.getRecordComponents()) {
      if (component.getType().isRecord()) {
        checked += check(component.getType());
      } else {
        ShownSetting shown = SHOWN.get(component.getName());
        assertTrue(shown != null, "Settings.shown has no row for " + component);
        assertTrue(shown.meaning().length() > 10, component.getName());
        checked++;
      }
    }
    return checked;
  }

  @Test
  void everyThresholdIsShownWithWhatItDoes() {
    assertTrue(check(NightSettings.class) >= 25);
  }

  @Test
  void smallNumbersAreWrittenOut() {
    assertEquals("0.00001", SHOWN.get("falseAlarmRate").value());
    assertEquals("6", SHOWN.get("nightGapHours").value());
  }
}
