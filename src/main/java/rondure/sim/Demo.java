package rondure.sim;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.function.Consumer;

/** The bundled sample night. */
public final class Demo {
  private static final String RECIPE = "recipe.json";

  private Demo() {}

  /**
   * Renders the sample night into a folder as 16-bit TIFF, with its truth.
   *
   * @param directory made when missing; must be empty
   * @param progress is told one line for each frame
   * @throws IOException when the folder is not empty or cannot be written; only whole files remain
   */
  public static void run(Path directory, Consumer<String> progress) throws IOException {
    SimRun.run(plan(), directory, OutputFormat.TIFF, progress);
  }

  /** The recipe of the sample night. */
  public static NightPlan plan() throws IOException {
    try (InputStream in = Demo.class.getResourceAsStream(RECIPE)) {
      if (in == null) {
        throw new IOException("the sample recipe is missing from this build");
      }
      return Recipe.read(in, RECIPE);
    }
  }
}
