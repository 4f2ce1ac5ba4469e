package rondure.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecipeTest {

  private static String refusal(String json) {
    byte[] bytes = json.getBytes(StandardCharsets.UTF_8);
    return assertThrows(
            IOException.class, () -> Recipe.read(new ByteArrayInputStream(bytes), "r.json"))
        .getMessage();
  }

  @Test
  void writtenRecipeReadsBackTheSame(@TempDir Path folder) throws IOException {
    NightPlan plan = Demo.plan();
    Path file = folder.resolve("r.json");
    Files.writeString(file, Recipe.toJson(plan));
    assertEquals(plan, Recipe.read(file));
  }

  @Test
  void sampleRecipeIsTheBundledOne() throws IOException {
    assertEquals(Recipe.read(Path.of("samples/recipe.json")), Demo.plan());
    assertEquals(20, Demo.plan().frameCount());
  }

  @Test
  void slipsOfThePenAreNamed() throws IOException {
    String good = Recipe.toJson(Plans.with());
    assertTrue(refusal(good.replace("\"seed\"", "\"sead\"")).contains("sead"));
    assertTrue(
        refusal(good.replace("\"fNumber\" : 2.8", "\"fNumber\" : 0"))
            .contains("fNumber must be > 0, was 0.0"));
    assertTrue(
        refusal(good.replace("2024-03-02T21:30:05.250", "last night")).contains("startLocalTime"));
    assertTrue(refusal("{\"seed\": 1}").contains("startLocalTime is missing"));
    assertTrue(refusal("not json").contains("r.json"));
  }

  @Test
  void timetableFollowsGroupsPausesAndFocusSteps() {
    NightPlan plan =
        Plans.with(
            "focusMicrons", "[{\"minutes\":0,\"value\":0},{\"minutes\":10,\"value\":60}]",
            "shots",
                """
                [{"count":2,"exposureSeconds":30,"trueExposureSeconds":32,"intervalSeconds":40,
                  "iso":800},
                 {"count":2,"pauseBeforeSeconds":100,"exposureSeconds":5,"intervalSeconds":5,
                  "iso":3200,"fNumber":4,"focusMicrons":-20,"focusStepMicrons":10}]""");
    List<Exposure> frames = Exposure.timetable(plan);
    assertEquals(4, frames.size());
    assertEquals(40, frames.get(1).startSeconds());
    assertEquals(56, frames.get(1).midSeconds());
    assertEquals(180, frames.get(2).startSeconds());
    assertEquals(4, frames.get(3).fNumber());
    assertEquals(0.1 * 56, frames.get(1).focusMicrons(), 1e-9);
    assertEquals(0.1 * 187.5 - 10, frames.get(3).focusMicrons(), 1e-9);
  }
}
