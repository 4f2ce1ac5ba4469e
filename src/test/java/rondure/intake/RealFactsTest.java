package rondure.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import rondure.base.FrameProblem;

/** Reads a folder of real photographs, when one is given. */
class RealFactsTest {

  private static Path folder(String name) {
    String given = System.getProperty("rondure.realFrames", "");
    assumeTrue(!given.isBlank(), "give -Drondure.realFrames=DIR to read real photographs");
    Path folder = Path.of(given).resolve(name);
    assumeTrue(Files.isDirectory(folder), "no folder " + name + " among the real photographs");
    return folder;
  }

  /** The photographer wrote the exposure into the names: 10_1100ms.jpg is 1.1 s. */
  @Test
  void exposuresAreThoseInTheNames() throws FrameProblem {
    List<FoundFile> files = Scan.scan(List.of(folder("sequence"))).files();
    assertEquals(22, files.size());
    for (FoundFile file : files) {
      ShotFacts facts = FactsReader.read(file.path());
      double seconds =
          Integer.parseInt(file.relativeName().replaceAll("\\d+_(\\d+)ms\\.jpg", "$1")) / 1000.0;
      assertEquals(seconds, facts.exposureSeconds().orElseThrow().value(), 0.001 * seconds);
      assertEquals(2, facts.fNumber().orElseThrow().value(), 1e-9);
      assertEquals(1024, facts.widthPx());
    }
  }

  @Test
  void theDuskHouseWasExposedForEightSeconds() throws FrameProblem {
    ShotFacts facts = FactsReader.read(folder("raw").resolve("house-at-dusk.crw"));
    assertEquals(8, facts.exposureSeconds().orElseThrow().value(), 0.01);
    assertEquals(2048, facts.widthPx());
  }
}
