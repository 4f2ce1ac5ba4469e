package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** From odds to probabilities; values by hand. */
class CalibrationTest {
  private static Map<Cause, Double> odds(double none, double focus, double trailing) {
    Map<Cause, Double> odds = new EnumMap<>(Cause.class);
    for (Cause cause : Cause.values()) {
      odds.put(cause, 0.0);
    }
    odds.put(Cause.NONE, none);
    odds.put(Cause.FOCUS, focus);
    odds.put(Cause.TRAILING, trailing);
    return odds;
  }

  @Test
  void powersDrawOddsTogether() {
    // √0.64 : √0.36 = 0.8 : 0.6
    Map<Cause, Double> p = new Calibration(0.5, 0, 0).of(odds(0, 0.64, 0.36));
    assertEquals(0.8 / 1.4, p.get(Cause.FOCUS), 1e-12);
    assertEquals(0.6 / 1.4, p.get(Cause.TRAILING), 1e-12);
  }

  @Test
  void hazeIsTakenFromWhatLooksSharp() {
    Map<Cause, Double> p = new Calibration(1, 0.4, 0).of(odds(0.5, 0.5, 0));
    assertEquals(0.3, p.get(Cause.NONE), 1e-12);
    assertEquals(0.2, p.get(Cause.HAZE), 1e-12);
    assertEquals(0.5, p.get(Cause.FOCUS), 1e-12);
  }

  @Test
  void whatGoesAstrayIsSpreadEvenly() {
    Map<Cause, Double> p = new Calibration(1, 0, 0.12).of(odds(0, 1, 0));
    assertEquals(0.9, p.get(Cause.FOCUS), 1e-12);
    assertEquals(0.02, p.get(Cause.LENS), 1e-12);
  }

  @ParameterizedTest
  @EnumSource(Ground.class)
  void nothingIsCertainAndAClearCauseStaysNamed(Ground ground) {
    Map<Cause, Double> p = Calibration.fitted(ground).of(odds(0.02, 0.96, 0.02));
    assertEquals(1, p.values().stream().mapToDouble(x -> x).sum(), 1e-12);
    assertTrue(p.get(Cause.FOCUS) >= Verdict.DECIDED_FROM, p.toString());
    assertTrue(p.values().stream().allMatch(x -> x > 0 && x < 0.99), p.toString());
  }

  @Test
  void sharesBeyondOneAreRefused() {
    assertThrows(IllegalArgumentException.class, () -> new Calibration(1, 1.1, 0));
    assertThrows(IllegalArgumentException.class, () -> new Calibration(1, 0, 1));
    assertThrows(IllegalArgumentException.class, () -> new Calibration(0, 0, 0));
  }
}
