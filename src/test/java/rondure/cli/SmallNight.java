package rondure.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import rondure.sim.OutputFormat;
import rondure.sim.Recipe;
import rondure.sim.SimRun;

/** Small rendered frames that can be measured, rendered once for all tests. */
final class SmallNight {
  static final int FRAMES = 4;
  static final int WIDTH = 360;
  static final int HEIGHT = 240;

  private static final String RECIPE =
      """
      {
        "title": "a small night", "seed": 11, "startLocalTime": "2024-03-02T21:30:05.250",
        "utcOffsetMinutes": 60,
        "camera": {"maker": "Larkmoor", "model": "Vesper One", "widthPx": 360, "heightPx": 240,
          "pixelPitchMicrons": 12, "mosaic": "RGGB", "electronsPerCount": 5, "baseIso": 800,
          "readNoiseElectrons": 4, "blackLevelCounts": 64, "whiteLevelCounts": 4159,
          "zeroPointElectronsPerSecondPerCm2": 4e5},
        "lens": {"model": "Larkmoor Wide 12 mm f/2", "focalLengthMm": 12, "fNumber": 2,
          "coreFwhmPx": 2.4},
        "aim": {"azimuthDeg": 180, "altitudeDeg": 45},
        "sky": {"latitudeDeg": 45, "zenithMagPerArcsec2": 20.5},
        "stars": {"starsPerSquareDegree": 1.0, "brightestMagnitude": 3, "faintestMagnitude": 6},
        "shots": [{"count": 4, "exposureSeconds": 10, "intervalSeconds": 60, "iso": 800}]
      }
      """;

  private static final Path HOME = rendered();

  private SmallNight() {}

  /** Copies frame {@code number}, 1 to {@link #FRAMES}, to a file. */
  static Path copy(OutputFormat format, int number, Path target) throws IOException {
    Files.createDirectories(target.getParent());
    return Files.copy(frame(format, number), target);
  }

  /** Copies the first frames into a folder as TIFF. */
  static Path tiffs(Path folder, int count) throws IOException {
    for (int number = 1; number <= count; number++) {
      copy(OutputFormat.TIFF, number, folder.resolve("night_" + number + ".tif"));
    }
    return folder;
  }

  /** The recipe as a file of its own. */
  static Path recipe() {
    return HOME.resolve("recipe.json");
  }

  static byte[] bytes(OutputFormat format, int number) throws IOException {
    return Files.readAllBytes(frame(format, number));
  }

  private static Path frame(OutputFormat format, int number) {
    return HOME.resolve(format.name())
        .resolve(String.format("night_%04d.%s", number, format.extension()));
  }

  private static Path rendered() {
    try {
      Path home = Files.createTempDirectory("small-night");
      Runtime.getRuntime().addShutdownHook(new Thread(() -> delete(home)));
      Path recipe = Files.writeString(home.resolve("recipe.json"), RECIPE);
      for (OutputFormat format : OutputFormat.values()) {
        SimRun.run(Recipe.read(recipe), home.resolve(format.name()), format, line -> {});
      }
      return home;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void delete(Path home) {
    try (Stream<Path> all = Files.walk(home)) {
      List<Path> innermostFirst = all.sorted(Comparator.reverseOrder()).toList();
      for (Path path : innermostFirst) {
        Files.delete(path);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
