package rondure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rondure.base.Moments;
import rondure.base.Orientation;
import rondure.base.RobustStats;
import rondure.intake.Fact;
import rondure.intake.ImageFormat;
import rondure.intake.Linearity;
import rondure.intake.ShotFacts;
import rondure.night.FrameStatus;
import rondure.night.NightBook;
import rondure.night.NightFrame;
import rondure.sim.FrameTruth;
import rondure.sim.NightPlan;
import rondure.sim.NightSimulator;
import rondure.sim.OutputFormat;
import rondure.sim.Recipe;
import rondure.sim.StarTruth;
import rondure.testing.LibRaw;

/**
 * One small night through the whole program: two ways of holding the camera, DNG, TIFF and JPEG in
 * several folders, copies, files without EXIF, and things that are no frames. The truth is the
 * simulator's.
 */
class MixedNightTest {
  private static final int FRAMES = 8;
  private static final String CARD = "Card 1/DCIM/100LARKM/";

  /** Frames 1 to 4 level, then the camera is turned; frames 3, 4, 7 and 8 are long. */
  private static final String RECIPE =
      """
      {
        "title": "mixed", "seed": 31, "startLocalTime": "2024-03-02T21:30:05.250",
        "utcOffsetMinutes": 60,
        "camera": {"maker": "Larkmoor", "model": "Vesper Two", "widthPx": 480, "heightPx": 320,
          "pixelPitchMicrons": 6, "mosaic": "GRBG", "electronsPerCount": 1, "baseIso": 800,
          "readNoiseElectrons": 3, "blackLevelCounts": 512, "whiteLevelCounts": 16383,
          "zeroPointElectronsPerSecondPerCm2": 2e6},
        "lens": {"model": "Larkmoor 24 mm f/2", "focalLengthMm": 24, "fNumber": 2,
          "coreFwhmPx": 2.4},
        "aim": {"azimuthDeg": 130, "altitudeDeg": 40},
        "sky": {"latitudeDeg": 45, "zenithMagPerArcsec2": 20.5},
        "stars": {"starsPerSquareDegree": 6, "brightestMagnitude": 2, "faintestMagnitude": 8},
        "temperatureC": [{"minutes": 0, "value": -2.5}],
        "shots": [
          {"count": 2, "exposureSeconds": 4, "intervalSeconds": 40, "iso": 800},
          {"count": 2, "exposureSeconds": 15, "intervalSeconds": 40, "iso": 800},
          {"count": 2, "exposureSeconds": 4, "intervalSeconds": 40, "iso": 800},
          {"count": 2, "exposureSeconds": 15, "intervalSeconds": 40, "iso": 800}],
        "events": [{"kind": "reAim", "frame": 5,
          "aim": {"azimuthDeg": 130, "altitudeDeg": 40, "held": "ROTATED_270_CW"}}],
        "files": {"jpegQuality": 97, "pushStops": 2, "withoutExif": %s}
      }
      """;

  @TempDir private static Path folder;
  private static NightBook book;
  private static final Map<String, NightFrame> FRAMES_BY_NAME = new TreeMap<>();
  private static final Map<String, FrameTruth> TRUTHS = new TreeMap<>();

  @BeforeAll
  static void runTheNight() throws Exception {
    LibRaw.isThere();
    write(folder.resolve("night"));
    book = WholeRun.of(folder.resolve("night"), folder.resolve("out"));
    book.frames().forEach(frame -> FRAMES_BY_NAME.put(frame.file(), frame));
  }

  private static NightSimulator simulator(boolean withoutExif) throws IOException {
    Path recipe = Files.createTempFile(folder, "recipe", ".json");
    Files.writeString(recipe, RECIPE.formatted(withoutExif));
    NightPlan plan = Recipe.read(recipe);
    return new NightSimulator(plan);
  }

  /** Odd frames as DNG with JPEG beside, even ones as TIFF; 1 and 2 a second time without EXIF. */
  private static void write(Path night) throws IOException {
    NightSimulator simulator = simulator(false);
    for (int number = 1; number <= FRAMES; number++) {
      var frame = simulator.render(number);
      if (number % 2 == 1) {
        put(night, CARD + "LARK000" + number + ".DNG", frame, OutputFormat.DNG);
        put(night, CARD + "LARK000" + number + ".JPG", frame, OutputFormat.JPEG);
      } else {
        put(night, "developed/LARK000" + number + ".tif", frame, OutputFormat.TIFF);
        put(night, "web/LARK000" + number + "_web.jpg", frame, OutputFormat.JPEG);
      }
    }
    NightSimulator silent = simulator(true);
    put(night, "from a friend/a.tif", silent.render(1), OutputFormat.TIFF);
    put(night, "from a friend/b.jpg", silent.render(4), OutputFormat.JPEG);
    Files.writeString(night.resolve(CARD + "LARK0001.THM"), "a small picture");
    Files.write(night.resolve(CARD + "._LARK0001.JPG"), new byte[] {0, 5, 22, 7});
    Files.write(night.resolve(CARD + "LARK0009.MOV"), new byte[100]);
    Files.writeString(night.resolve("web/broken.jpg"), "no picture");
  }

  private static void put(Path night, String name, rondure.sim.SimFrame frame, OutputFormat format)
      throws IOException {
    Files.createDirectories(night.resolve(name).getParent());
    try (OutputStream out = Files.newOutputStream(night.resolve(name))) {
      format.write(frame, out);
    }
    TRUTHS.put(name, frame.truth());
  }

  @Test
  void everyExposureIsOneFrameAndTheBestFileIsMeasured() {
    assertEquals(FRAMES + 3, book.frames().size(), FRAMES_BY_NAME.keySet().toString());
    for (int number = 1; number <= FRAMES; number += 2) {
      NightFrame raw = FRAMES_BY_NAME.get(CARD + "LARK000" + number + ".DNG");
      assertEquals(List.of(CARD + "LARK000" + number + ".JPG"), raw.copies());
      NightFrame tiff = FRAMES_BY_NAME.get("developed/LARK000" + (number + 1) + ".tif");
      assertEquals(List.of("web/LARK000" + (number + 1) + "_web.jpg"), tiff.copies());
    }
    assertEquals(Map.of("sidecar", 1, "video", 1), book.ignoredCounts());
    NightFrame broken = FRAMES_BY_NAME.get("web/broken.jpg");
    assertEquals(FrameStatus.UNREADABLE, broken.status());
    assertTrue(broken.reason().orElseThrow().contains("a text file"));
  }

  /**
   * Widths by second moments: short exposures keep the stars Gaussian within a per cent. The TIFFs
   * were developed by bilinear interpolation, which adds 1/4 px² to green (closed form: taps 1/4 at
   * the four neighbours of half the pixels).
   */
  @Test
  void shortExposuresAreAsWideAsTheSimulatorMadeThem() {
    for (int number : new int[] {1, 2, 5, 6}) {
      NightFrame frame = measured(number);
      double bilinear = frame.facts().format() == ImageFormat.TIFF ? 0.25 : 0;
      double truth =
          2.354820 * Math.sqrt(median(frame.file(), MixedNightTest::widthPx2) + bilinear);
      assertEquals(1, frame.shape().orElseThrow().fwhmPx() / truth, 0.05, frame.file());
    }
  }

  private static NightFrame measured(int number) {
    String name =
        number % 2 == 1
            ? CARD + "LARK000" + number + ".DNG"
            : "developed/LARK000" + number + ".tif";
    NightFrame frame = FRAMES_BY_NAME.get(name);
    assertEquals(FrameStatus.MEASURED, frame.status(), frame.file() + frame.reason());
    return frame;
  }

  private static double median(String file, java.util.function.ToDoubleFunction<StarTruth> value) {
    return RobustStats.median(TRUTHS.get(file).stars().stream().mapToDouble(value).toArray());
  }

  /** σ² of the round Gaussian of the same area: √(det M). */
  private static double widthPx2(StarTruth star) {
    return Math.sqrt(star.xxPx2() * star.yyPx2() - star.xyPx2() * star.xyPx2());
  }

  /** 15 s draw trails of 4 px; turned by a quarter they lie as the sky does, not the sensor. */
  @Test
  void trailsPointAsDisplayedHoweverTheCameraWasHeld() {
    for (int number : new int[] {3, 4, 7, 8}) {
      NightFrame frame = measured(number);
      Moments stored =
          new Moments(
              median(frame.file(), StarTruth::xxPx2),
              median(frame.file(), StarTruth::xyPx2),
              median(frame.file(), StarTruth::yyPx2));
      double turn = number > 4 ? 270 : 0;
      double wanted = Math.toDegrees(stored.positionAngleRad()) + turn;
      double found = frame.shape().orElseThrow().elongationAngleDeg();
      assertEquals(0, Math.IEEEremainder(found - wanted, 180), 3, frame.file());
      assertTrue(frame.shape().orElseThrow().roundness() < 0.7, frame.file());
    }
    assertEquals(Orientation.ROTATED_270_CW, measured(7).facts().orientation());
    double level = measured(3).shape().orElseThrow().elongationAngleDeg();
    double turned = measured(7).shape().orElseThrow().elongationAngleDeg();
    assertEquals(0, Math.IEEEremainder(level - turned, 180), 6);
  }

  @Test
  void factsSayWhereTheyCameFrom() {
    for (int number = 1; number <= FRAMES; number++) {
      ShotFacts facts = measured(number).facts();
      assertEquals(Fact.Source.FILE, facts.exposureSeconds().orElseThrow().source());
      assertEquals(24, facts.focalLengthMm().orElseThrow().value(), 1e-6);
      assertEquals(Fact.Source.DERIVED, facts.pixelPitchMicrons().orElseThrow().source());
      assertEquals(6, facts.pixelPitchMicrons().orElseThrow().value(), 0.01);
      assertEquals(-2.5, facts.ambientTemperatureC().orElseThrow().value(), 1e-9);
      assertEquals(3600, facts.captureTime().orElseThrow().offsetSeconds().orElseThrow());
      assertTrue(facts.captureTime().orElseThrow().subSecondsKnown());
    }
  }

  @Test
  void framesWithoutExifAreMeasuredAndConcludeLess() {
    NightFrame tiff = FRAMES_BY_NAME.get("from a friend/a.tif");
    NightFrame twin = measured(1);
    assertEquals(FrameStatus.MEASURED, tiff.status());
    assertTrue(tiff.facts().exposureSeconds().isEmpty());
    assertTrue(tiff.trailPredictedPx().isEmpty());
    assertEquals(Linearity.ASSUMED, tiff.measurement().orElseThrow().linearity());
    double ratio = tiff.shape().orElseThrow().fwhmPx() / twin.shape().orElseThrow().fwhmPx();
    assertTrue(ratio > 0.97 && ratio < 1.15, "demosaiced over sensor: " + ratio);
    NightFrame jpeg = FRAMES_BY_NAME.get("from a friend/b.jpg");
    assertEquals(Linearity.DEVELOPED, jpeg.measurement().orElseThrow().linearity());
    assertEquals(
        0,
        Math.IEEEremainder(
            jpeg.shape().orElseThrow().elongationAngleDeg()
                - measured(4).shape().orElseThrow().elongationAngleDeg(),
            180),
        6);
  }
}
