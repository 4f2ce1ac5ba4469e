package rondure.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import rondure.base.PixelPlane;
import rondure.sim.NightPlan;
import rondure.sim.NightSimulator;
import rondure.sim.Recipe;
import rondure.sim.SimFrame;
import rondure.stars.PixelContext;
import rondure.stars.StarField;
import rondure.stars.StarMeter;
import rondure.stars.StarSettings;

/** Frames of the sample night's camera, changed at will, rendered and measured in memory. */
public final class SimNight {
  private static final Path RECIPE = Path.of("samples", "recipe.json");

  private static final String[] CALM = {
    "focusMicrons", "[]",
    "events", "[]",
    "shots", "[{\"count\": 1, \"exposureSeconds\": 13, \"intervalSeconds\": 75, \"iso\": 800}]"
  };

  private SimNight() {}

  /**
   * A calm night of one 13 s frame with the sample's camera, lens and sky.
   *
   * @param changes pairs of a path such as {@code lens.coreFwhmPx} and its value as JSON
   */
  public static NightPlan plan(String... changes) {
    try {
      String calm = RecipeChanges.in(Files.readString(RECIPE), CALM);
      Path file = Files.createTempFile("plan", ".json");
      try {
        Files.writeString(file, RecipeChanges.in(calm, changes));
        return Recipe.read(file);
      } finally {
        Files.deleteIfExists(file);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Renders a frame of a plan, from 1, and measures it as the program does. */
  public static StarField measure(NightPlan plan, int frame) {
    return measure(NightSimulator.render(plan, frame));
  }

  /** Measures a rendered frame as the program does. */
  public static StarField measure(SimFrame picture) {
    NightPlan plan = picture.plan();
    int black = plan.camera().blackLevelCounts();
    float[] counts = new float[picture.widthPx() * picture.heightPx()];
    for (int i = 0; i < counts.length; i++) {
      counts[i] = picture.at(i % picture.widthPx(), i / picture.widthPx()) - black;
    }
    PixelPlane plane = PixelPlane.full(picture.widthPx(), picture.heightPx(), counts);
    PixelContext context =
        new PixelContext(plan.camera().whiteLevelCounts() - (double) black, 1, false);
    return StarMeter.measure(plane, context, StarSettings.defaults());
  }
}
