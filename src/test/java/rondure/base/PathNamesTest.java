package rondure.base;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PathNamesTest {

  @ParameterizedTest
  @ValueSource(strings = {"frame 1.tif", "100%.tif", "a+b#c.tif", "-dash"})
  void aNameIsItself(String name) {
    assertEquals(name, PathNames.last(Path.of("folder", name)));
    Path more = PathNames.withSuffix(Path.of("folder", name), "-rondure-2");
    assertEquals(Path.of("folder", name + "-rondure-2").toAbsolutePath(), more);
  }

  @Test
  void aRootHasNoName() {
    assertEquals("", PathNames.last(Path.of("/").toAbsolutePath().getRoot()));
  }
}
