package rondure.sim;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.stream.Stream;

/** Renders a whole night into a folder: the frames, and {@code truth.json} beside them. */
public final class SimRun {
  private SimRun() {}

  /**
   * Renders every frame of a plan as {@code night_0001.tif} and so on, and {@code truth.json}.
   *
   * @param directory made when missing; must be empty
   * @param progress is told one line for each frame
   * @throws IOException when the folder is not empty or cannot be written; only whole files remain
   * @throws IllegalArgumentException for a DNG from a mono camera
   */
  public static void run(
      NightPlan plan, Path directory, OutputFormat format, Consumer<String> progress)
      throws IOException {
    if (format == OutputFormat.DNG && !plan.camera().mosaic().isBayer()) {
      throw new IllegalArgumentException(
          "a DNG needs a camera with a Bayer mosaic; set \"mosaic\" to RGGB or write TIFF");
    }
    prepare(directory);
    NightSimulator simulator = new NightSimulator(plan);
    List<FrameTruth> truths = new ArrayList<>();
    for (int number = 1; number <= simulator.frameCount(); number++) {
      SimFrame frame = simulator.render(number);
      String name = String.format(Locale.ROOT, "night_%04d.%s", number, format.extension());
      whole(directory.resolve(name), out -> format.write(frame, out));
      truths.add(frame.truth().named(name));
      progress.accept(name + " (" + number + " of " + simulator.frameCount() + ")");
    }
    byte[] json = Recipe.toJson(new NightTruth(plan, truths));
    whole(directory.resolve("truth.json"), out -> out.write(json));
  }

  private static void prepare(Path directory) throws IOException {
    if (Files.exists(directory) && !Files.isDirectory(directory)) {
      throw new IOException(directory + " is a file; name a folder that is new or empty");
    }
    Files.createDirectories(directory);
    try (Stream<Path> inside = Files.list(directory)) {
      if (inside.findAny().isPresent()) {
        throw new IOException(directory + " is not empty; name a folder that is new or empty");
      }
    }
  }

  /** What writes the bytes of one file. */
  private interface Writing {
    void to(OutputStream out) throws IOException;
  }

  /** Writes under another name first, so that a file of this name is always whole. */
  private static void whole(Path file, Writing writing) throws IOException {
    Path part = file.resolveSibling("." + file.getFileName() + ".part");
    try {
      try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(part), 1 << 16)) {
        writing.to(out);
      }
      Files.move(part, file, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(part);
    }
  }
}
