package rondure.sim;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import rondure.testing.RecipeChanges;

/** Small plans for tests: a plain one, changed by paths into its recipe. */
final class Plans {
  private static final String PLAIN =
      """
      {
        "title": "plain", "seed": 7, "startLocalTime": "2024-03-02T21:30:05.250",
        "utcOffsetMinutes": -210,
        "camera": {"maker": "Larkmoor", "model": "Larkmoor Vesper One", "widthPx": 240,
          "heightPx": 160, "pixelPitchMicrons": 6, "electronsPerCount": 2, "baseIso": 800,
          "readNoiseElectrons": 3, "blackLevelCounts": 64, "whiteLevelCounts": 4159,
          "zeroPointElectronsPerSecondPerCm2": 1e6},
        "lens": {"model": "Larkmoor Wide 24 mm f/2.8", "focalLengthMm": 24, "fNumber": 2.8,
          "coreFwhmPx": 2.2},
        "aim": {"azimuthDeg": 180, "altitudeDeg": 45},
        "sky": {"latitudeDeg": 45, "zenithMagPerArcsec2": 21},
        "stars": {"starsPerSquareDegree": 2, "brightestMagnitude": 3, "faintestMagnitude": 8},
        "shots": [{"count": 3, "exposureSeconds": 20, "intervalSeconds": 25, "iso": 800}]
      }
      """;

  private Plans() {}

  /**
   * The plain plan with changes.
   *
   * @param changes pairs of a path such as {@code lens.comaPx} and its value as JSON
   */
  static NightPlan with(String... changes) {
    try {
      byte[] json = RecipeChanges.in(PLAIN, changes).getBytes(StandardCharsets.UTF_8);
      return Recipe.read(new ByteArrayInputStream(json), "test");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
