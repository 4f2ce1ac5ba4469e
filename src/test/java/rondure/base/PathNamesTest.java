package rondure.base;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PathNamesTest {

  @ParameterizedTest
  @ValueSource(strings = {"frame 1.tif", "100%.tif", "a+b#c.tif", "-dash"})
  void aNameIsItself(String name) {
    assertEquals(name, PathNames.last(Path.of("folder", name)));
    Path more = PathNames.withSuffix(Path.of("folder", name), "-rondure-2");
    assertEquals(Path.of("folder", name + "-rondure-2").toAbsolutePath(), more);
  }

  @ParameterizedTest
  @CsvSource({
    "a.b.tif,a.b.xmp",
    "frame,frame.xmp",
    ".hidden,.hidden.xmp",
    "100% a+b#.x y,100% a+b#.xmp"
  })
  void anExtensionIsWhatFollowsTheLastDot(String name, String expected) {
    Path path = Path.of("fol.der", name);
    assertEquals(
        Path.of("fol.der", expected).toAbsolutePath(), PathNames.withExtension(path, ".xmp"));
  }

  @Test
  void aPathBelowAFolderStaysBelowIt() {
    Path folder = Path.of("out put");
    assertEquals(
        folder.resolve("a b").resolve("100%?#.xmp").toAbsolutePath(),
        PathNames.below(folder, "a b/100%?#.xmp"));
    for (String bad : new String[] {"../a", "a/../b", "/a", "a//b", ".", ""}) {
      assertThrows(IllegalArgumentException.class, () -> PathNames.below(folder, bad), bad);
    }
  }

  @Test
  void aRootHasNoName() {
    assertEquals("", PathNames.last(Path.of("/").toAbsolutePath().getRoot()));
  }
}
