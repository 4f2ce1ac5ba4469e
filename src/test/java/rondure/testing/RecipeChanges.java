package rondure.testing;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** Changes a recipe of the simulator by paths into it. */
public final class RecipeChanges {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  private RecipeChanges() {}

  /**
   * The recipe with changes.
   *
   * @param recipe JSON
   * @param changes pairs of a path such as {@code lens.comaPx} and its value as JSON
   * @return JSON
   */
  public static String in(String recipe, String... changes) {
    try {
      JsonNode root = MAPPER.readTree(recipe);
      for (int i = 0; i < changes.length; i += 2) {
        change((ObjectNode) root, changes[i].split("\\."), MAPPER.readTree(changes[i + 1]));
      }
      return root.toString();
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException(e);
    }
  }

  private static void change(ObjectNode root, String[] steps, JsonNode value) {
    ObjectNode parent = root;
    for (int step = 0; step < steps.length - 1; step++) {
      parent = parent.withObject("/" + steps[step]);
    }
    parent.set(steps[steps.length - 1], value);
  }
}
