package rondure.store;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A program that may measure differently has another identity, without anybody counting it up. */
class MeasuringProgramTest {
  @TempDir Path root;

  private String digest() throws IOException {
    var digest = Sha256.digest();
    MeasuringProgram.addClasses(digest, root);
    return HexFormat.of().formatHex(digest.digest());
  }

  private void writeClass(String name, String code) throws IOException {
    Files.writeString(root.resolve(name), code);
  }

  @Test
  void anyChangeOfTheMeasuringCodeChangesIt() throws IOException {
    for (String name : MeasuringProgram.PACKAGES) {
      Files.createDirectories(root.resolve(name));
    }
    assertThrows(IOException.class, this::digest, "a program without code");
    writeClass("stars/A.class", "one");
    String first = digest();
    assertEquals(first, digest());
    writeClass("stars/A.class", "two");
    String changed = digest();
    writeClass("stars/A.class", "one");
    writeClass("base/B.class", "");
    String added = digest();
    Files.move(root.resolve("base/B.class"), root.resolve("base/C.class"));
    String renamed = digest();
    assertEquals(4, List.of(first, changed, added, renamed).stream().distinct().count());
    writeClass("base/notes.txt", "no code");
    Files.createDirectory(root.resolve("report"));
    writeClass("report/Page.class", "pages measure nothing");
    assertEquals(renamed, digest());
  }

  @Test
  void theIdentityIsTheSameEveryTimeAndKnowsTheJavaThatRuns() throws IOException {
    String identity = MeasuringProgram.identity();
    assertEquals(identity, MeasuringProgram.identity());
    String version = System.setProperty("java.runtime.version", "another");
    try {
      assertNotEquals(identity, MeasuringProgram.identity());
    } finally {
      System.setProperty("java.runtime.version", version);
    }
  }

  /** No code that measuring runs through lies outside of what is digested. */
  @Test
  void measuringUsesNoOtherPackageOfOurs() {
    JavaClasses house =
        new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("rondure");
    String[] digested =
        MeasuringProgram.PACKAGES.stream().map(name -> "rondure." + name).toArray(String[]::new);
    String[] others =
        house.stream()
            .map(one -> one.getPackageName())
            .distinct()
            .filter(name -> !List.of(digested).contains(name))
            .toArray(String[]::new);
    noClasses()
        .that()
        .resideInAnyPackage(digested)
        .should()
        .dependOnClassesThat(resideInAnyPackage(others))
        .check(house);
  }
}
