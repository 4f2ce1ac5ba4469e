package rondure.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * How well focal lengths come back, and whether their stated errors hold: {@code
 * target/calibration-grid.txt}, from which the table in docs/accuracy.md is made.
 */
class CalibrationGridTest {
  private static final int SEEDS = 16;

  private record Setting(String name, int frames, double interval, int stars, double noisePx) {}

  private static final List<Setting> SETTINGS =
      List.of(
          new Setting("3 x 30 s, 100 stars, 0.1 px", 3, 30, 100, 0.1),
          new Setting("12 x 25 s, 80 stars, 0.15 px", 12, 25, 80, 0.15),
          new Setting("30 x 30 s, 120 stars, 0.1 px", 30, 30, 120, 0.1),
          new Setting("40 x 60 s, 200 stars, 0.1 px", 40, 60, 200, 0.1));

  private static final class Tally {
    private int calibrated;
    private double focalSquare;
    private double pullSquare;
    private double k1Square;
    private double worst;

    void add(CameraFinding finding, TurningSky sky) {
      if (finding.isCalibrated()) {
        double off = finding.camera().focalLengthPx() / sky.focalPx - 1;
        double pull = off / finding.focalErrorShare();
        calibrated++;
        focalSquare += off * off;
        pullSquare += pull * pull;
        k1Square += Math.pow(finding.camera().k1() - sky.k1, 2);
        worst = Math.max(worst, Math.abs(off));
      }
    }

    double pull() {
      return Math.sqrt(pullSquare / calibrated);
    }

    String line() {
      return String.format(
          Locale.ROOT,
          "calibrated %2d of %d, f r.m.s. %.3f %%, worst %.3f %%, over stated error %.2f, k1 r.m.s."
              + " %.4f",
          calibrated,
          SEEDS,
          100 * Math.sqrt(focalSquare / calibrated),
          100 * worst,
          pull(),
          Math.sqrt(k1Square / calibrated));
    }
  }

  @Test
  @Tag("thorough")
  void statedErrorsHoldOverTheGrid() throws IOException {
    List<String> lines = new ArrayList<>();
    for (double focalMm : new double[] {14, 24, 50, 85, 135}) {
      for (Setting setting : SETTINGS) {
        for (boolean timed : new boolean[] {false, true}) {
          Tally tally = tally(focalMm, setting, timed);
          String clock = timed ? "clock of 1 s" : "no clock";
          lines.add(focalMm + " mm, " + setting.name() + ", " + clock + ": " + tally.line());
          if (tally.calibrated >= SEEDS / 2) {
            assertTrue(tally.pull() < 1.8, lines.get(lines.size() - 1));
            assertTrue(tally.worst < 0.035, lines.get(lines.size() - 1));
          }
        }
      }
    }
    Files.write(Path.of("target", "calibration-grid.txt"), lines);
    assertEquals(40, lines.size());
  }

  private static Tally tally(double focalMm, Setting setting, boolean timed) {
    Tally tally = new Tally();
    for (int seed = 0; seed < SEEDS; seed++) {
      TurningSky sky = new TurningSky(seed);
      sky.focalPx = focalMm * 1000 / 6;
      sky.k1 = 0.03 * (seed % 3 - 1);
      sky.frames = setting.frames();
      sky.intervalSeconds = setting.interval();
      sky.starsInFrame = setting.stars();
      sky.noisePx = setting.noisePx();
      sky.outlierShare = 0.1;
      sky.clockStepSeconds = 1;
      Camera nominal = sky.nominal(seed % 2 == 0 ? 1.03 : 0.97);
      SceneClock clock = timed ? sky.clock() : SceneClock.NONE;
      tally.add(CameraCalibration.of(nominal, sky.sightings(), clock), sky);
    }
    return tally;
  }
}
