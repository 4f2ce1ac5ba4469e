package rondure.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The commands that render nights, and what they say when they cannot. */
class SimCommandTest {
  @TempDir Path temp;

  @Test
  void aRecipeBecomesFramesWithTheirTruth() throws IOException {
    Path night = temp.resolve("night");
    Run run = Run.of("sim", SmallNight.recipe(), night, "--format", "DNG");
    assertEquals(0, run.code(), run.err());
    assertEquals(
        List.of("night_0001.dng", "night_0002.dng", "night_0003.dng", "night_0004.dng"),
        Run.names(night).stream().filter(name -> name.endsWith(".dng")).toList());
    assertTrue(Files.size(night.resolve("truth.json")) > 0);
  }

  @Test
  void aFolderThatIsNotEmptyIsLeftAlone() throws IOException {
    Path theirs = Files.writeString(temp.resolve("theirs.txt"), "keep me");
    for (Run run : List.of(Run.of("demo", temp), Run.of("sim", SmallNight.recipe(), temp))) {
      assertEquals(2, run.code());
      assertEquals(1, run.errLines().size(), run.err());
      assertTrue(run.err().contains("not empty"), run.err());
    }
    assertEquals("keep me", Files.readString(theirs));
    assertFalse(Run.names(temp).contains("truth.json"));
  }

  @Test
  void aRecipeThatIsMissingOrBrokenIsNamedInOneSentence() throws IOException {
    Path broken = Files.writeString(temp.resolve("broken.json"), "{\"title\": 3, \"sead\": 1}");
    for (Path recipe : List.of(broken, temp.resolve("nowhere.json"))) {
      Run run = Run.of("sim", recipe, temp.resolve("night"));
      assertEquals(2, run.code());
      assertEquals(1, run.errLines().size(), run.err());
      assertTrue(run.err().contains(recipe.getFileName().toString()), run.err());
    }
    assertFalse(Files.exists(temp.resolve("night")));
  }

  @Test
  void aFormatThatIsUnknownIsABadCommand() throws IOException {
    Run run = Run.of("sim", SmallNight.recipe(), temp.resolve("night"), "--format", "GIF");
    assertEquals(2, run.code());
    assertTrue(run.err().contains("GIF"), run.err());
  }
}
