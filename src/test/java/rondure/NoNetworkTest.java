package rondure;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.net.URL;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** No class of the program can reach a network; {@code cli.NoWayInTest} watches whole runs. */
class NoNetworkTest {
  private static final JavaClasses PROGRAM =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("rondure");

  private static final Set<String> HARMLESS =
      Set.of("java.net.URI", "java.net.URL", "java.net.URISyntaxException");

  private static final DescribedPredicate<JavaClass> NETWORK =
      DescribedPredicate.describe(
          "speak to a network",
          type ->
              type.getPackageName().startsWith("java.net.http")
                  || type.getPackageName().equals("java.net") && !HARMLESS.contains(type.getName())
                  || type.getPackageName().startsWith("javax.net")
                  || type.getPackageName().startsWith("java.rmi")
                  || type.getName().matches("java\\.nio\\.channels\\..*(Socket|Datagram).*"));

  @Test
  void noClassUsesSocketsOrConnections() {
    assertTrue(PROGRAM.size() > 300, "too few classes: " + PROGRAM.size());
    noClasses().should().dependOnClassesThat(NETWORK).check(PROGRAM);
    noClasses().should().callMethod(URL.class, "openConnection").check(PROGRAM);
  }
}
