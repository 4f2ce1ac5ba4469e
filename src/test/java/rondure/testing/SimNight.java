package rondure.testing;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
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
  private static final ObjectMapper MAPPER = new ObjectMapper();
  private static final Path RECIPE = Path.of("samples", "recipe.json");

  private SimNight() {}

  /**
   * A calm night of one 13 s frame with the sample's camera, lens and sky.
   *
   * @param changes pairs of a path such as {@code lens.coreFwhmPx} and its value as JSON
   */
  public static NightPlan plan(String... changes) {
    try {
      JsonNode root = MAPPER.readTree(Files.readAllBytes(RECIPE));
      change(root, "focusMicrons", "[]");
      change(root, "events", "[]");
      change(
          root,
          "shots",
          "[{\"count\": 1, \"exposureSeconds\": 13, \"intervalSeconds\": 75, \"iso\": 800}]");
      for (int i = 0; i < changes.length; i += 2) {
        change(root, changes[i], changes[i + 1]);
      }
      Path file = Files.createTempFile("plan", ".json");
      try {
        Files.writeString(file, root.toString());
        return Recipe.read(file);
      } finally {
        Files.deleteIfExists(file);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void change(JsonNode root, String path, String json) throws IOException {
    ObjectNode parent = (ObjectNode) root;
    String[] steps = path.split("\\.");
    for (int step = 0; step < steps.length - 1; step++) {
      parent = parent.withObject("/" + steps[step]);
    }
    parent.set(steps[steps.length - 1], MAPPER.readTree(json));
  }

  /** Renders a frame of a plan, from 1, and measures it as the program does. */
  public static StarField measure(NightPlan plan, int frame) {
    SimFrame picture = NightSimulator.render(plan, frame);
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
