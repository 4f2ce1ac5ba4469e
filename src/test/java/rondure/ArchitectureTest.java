package rondure;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Holds the plan of the house: who may know whom, and where each library lives. */
class ArchitectureTest {

  /** Raise with the program, so that a broken import of classes cannot pass for a clean house. */
  private static final int LEAST_CLASSES = 300;

  private static final Path SOURCES = Path.of("src", "main", "java");

  /** Packages whose note is not written yet; empty this when they are. */
  private static final Set<String> NOTES_TO_COME = Set.of();

  /** Each package and those of ours that it may import. */
  private static final Map<String, List<String>> MAY_IMPORT = new LinkedHashMap<>();

  static {
    MAY_IMPORT.put("rondure.base", List.of());
    MAY_IMPORT.put("rondure.intake", of("base"));
    MAY_IMPORT.put("rondure.stars", of("base"));
    MAY_IMPORT.put("rondure.crew", of("base", "intake", "stars"));
    MAY_IMPORT.put("rondure.store", of("base", "intake", "stars", "crew"));
    MAY_IMPORT.put("rondure.sky", of("base", "intake", "stars"));
    MAY_IMPORT.put("rondure.blur", of("base", "stars", "sky"));
    MAY_IMPORT.put("rondure.night", of("base", "intake", "stars", "crew", "sky", "blur"));
    for (String room :
        List.of("rondure.report", "rondure.report.layout", "rondure.report.picture")) {
      MAY_IMPORT.put(
          room,
          of(
              "base",
              "intake",
              "stars",
              "crew",
              "sky",
              "blur",
              "night",
              "report",
              "report.layout",
              "report.picture"));
    }
    MAY_IMPORT.put(
        "rondure.report.sidecar", of("base", "intake", "stars", "blur", "night", "report"));
    MAY_IMPORT.put("rondure.sim", of("base", "intake"));
    MAY_IMPORT.put(
        "rondure",
        of(
            "base",
            "intake",
            "stars",
            "crew",
            "store",
            "sky",
            "blur",
            "night",
            "report",
            "report.sidecar"));
    MAY_IMPORT.put(
        "rondure.cli", of("", "base", "sky", "night", "report", "report.sidecar", "sim"));
  }

  /** Where the simulator may look inside intake: facts of an exposure, no decoder. */
  private static final Set<String> FACTS =
      Set.of("ShotFacts", "Fact", "CaptureTime", "ImageFormat", "Linearity");

  /** Records that carry a measurement out of the workers. */
  private static final Set<String> MEASUREMENTS = Set.of("Outcome", "FrameMeasurement");

  /** Each library and the packages that may use it. */
  private static final Map<String, List<String>> FENCES = new LinkedHashMap<>();

  static {
    FENCES.put("com.drew..", List.of("rondure.intake.."));
    FENCES.put("com.adobe..", List.of("rondure.intake..", "rondure.report.sidecar.."));
    FENCES.put("com.sun.jna..", List.of("rondure.intake.."));
    FENCES.put("com.openhtmltopdf..", List.of("rondure.report.."));
    FENCES.put("org.apache.pdfbox..", List.of("rondure.report.."));
    FENCES.put("org.apache.xmpbox..", List.of("rondure.report.."));
    FENCES.put("org.apache.fontbox..", List.of("rondure.report.."));
    FENCES.put("de.rototor..", List.of("rondure.report.."));
    FENCES.put("com.samskivert..", List.of("rondure.report.."));
    FENCES.put("picocli..", List.of("rondure.cli.."));
    FENCES.put("me.tongfei..", List.of("rondure.cli.."));
    FENCES.put(
        "org.hipparchus..",
        List.of("rondure.sky..", "rondure.blur..", "rondure.night..", "rondure.sim.."));
    FENCES.put(
        "com.fasterxml.jackson.databind..",
        List.of("rondure.crew..", "rondure.report..", "rondure.sim..", "rondure"));
    FENCES.put(
        "com.fasterxml.jackson.dataformat..",
        List.of("rondure.crew..", "rondure.report..", "rondure"));
  }

  private static JavaClasses house;

  private static List<String> of(String... names) {
    return Stream.of(names).map(name -> name.isEmpty() ? "rondure" : "rondure." + name).toList();
  }

  @BeforeAll
  static void importClasses() {
    house =
        new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("rondure");
  }

  @Test
  void theWholeHouseIsSeen() {
    assertTrue(
        house.size() >= LEAST_CLASSES,
        "saw only " + house.size() + " classes, expected at least " + LEAST_CLASSES);
  }

  @Test
  void everyPackageHasItsPlaceInTheTable() {
    Set<String> strangers = new TreeSet<>();
    for (JavaClass one : house) {
      if (!MAY_IMPORT.containsKey(one.getPackageName())) {
        strangers.add(one.getPackageName());
      }
    }
    assertEquals(Set.of(), strangers, "packages without a row in the table");
  }

  @TestFactory
  Stream<DynamicTest> packagesKnowOnlyThoseBelow() {
    return MAY_IMPORT.entrySet().stream()
        .map(
            row ->
                DynamicTest.dynamicTest(
                    row.getKey(), () -> knowsOnly(row.getKey(), row.getValue()).check(house)));
  }

  @Test
  void aForbiddenImportIsNoticed() {
    assertThrows(AssertionError.class, () -> knowsOnly("rondure.night", of("base")).check(house));
    assertThrows(AssertionError.class, () -> fenced("org.hipparchus..", of("report")).check(house));
  }

  private static ArchRule knowsOnly(String room, List<String> allowed) {
    List<String> forbidden = new ArrayList<>(MAY_IMPORT.keySet());
    forbidden.removeAll(allowed);
    forbidden.remove(room);
    return noClasses()
        .that()
        .resideInAPackage(room)
        .should()
        .dependOnClassesThat(resideInAnyPackage(forbidden.toArray(String[]::new)))
        .allowEmptyShould(true);
  }

  @TestFactory
  Stream<DynamicTest> librariesStayBehindTheirFences() {
    return FENCES.entrySet().stream()
        .map(
            fence ->
                DynamicTest.dynamicTest(
                    fence.getKey(), () -> fenced(fence.getKey(), fence.getValue()).check(house)));
  }

  private static ArchRule fenced(String library, List<String> rooms) {
    return noClasses()
        .that()
        .resideOutsideOfPackages(rooms.toArray(String[]::new))
        .should()
        .dependOnClassesThat(resideInAPackage(library))
        .allowEmptyShould(true);
  }

  @Test
  void onlyFactsOfIntakeAreKnownToTheSkyAndTheSimulator() {
    noClasses()
        .that()
        .resideInAnyPackage("rondure.sky..", "rondure.sim..")
        .should()
        .dependOnClassesThat(outsideOf("rondure.intake", FACTS))
        .allowEmptyShould(true)
        .check(house);
  }

  @Test
  void onlyMeasurementsOfTheCrewAreKnownToTheNightAndTheReport() {
    noClasses()
        .that()
        .resideInAnyPackage("rondure.night..", "rondure.report..")
        .should()
        .dependOnClassesThat(outsideOf("rondure.crew", MEASUREMENTS))
        .allowEmptyShould(true)
        .check(house);
  }

  private static DescribedPredicate<JavaClass> outsideOf(String room, Set<String> known) {
    return DescribedPredicate.describe(
        "are in " + room + " but none of " + known,
        one -> one.getPackageName().equals(room) && !known.contains(outermost(one)));
  }

  private static String outermost(JavaClass one) {
    return one.getEnclosingClass().map(ArchitectureTest::outermost).orElse(one.getSimpleName());
  }

  /** The worker's protocol runs over its own standard streams. */
  @Test
  void onlyTheCommandLineSpeaksToTheTerminal() {
    DescribedPredicate<JavaAccess<?>> terminal =
        DescribedPredicate.describe(
            "System.out or System.err",
            access ->
                access.getTargetOwner().isEquivalentTo(System.class)
                    && Set.of("out", "err").contains(access.getTarget().getName()));
    noClasses()
        .that()
        .resideOutsideOfPackages("rondure.cli..", "rondure.crew..")
        .should()
        .accessTargetWhere(terminal)
        .check(house);
    noClasses()
        .that()
        .resideOutsideOfPackages("rondure.cli..", "rondure.crew..")
        .should()
        .callMethod(Throwable.class, "printStackTrace")
        .check(house);
  }

  @Test
  void recordsCarryNoArrays() {
    List<String> arrays = new ArrayList<>();
    for (JavaClass one : house) {
      if (one.isRecord()) {
        one.getFields().stream()
            .filter(field -> !field.getModifiers().contains(JavaModifier.STATIC))
            .filter(field -> field.getRawType().isArray())
            .forEach(field -> arrays.add(field.getFullName()));
      }
    }
    assertEquals(List.of(), arrays, "record components that are arrays");
  }

  /** Every package says what goes in, what comes out, its steps, and what it does not know. */
  @Test
  void everyPackageNoteHasItsHeadings() throws IOException {
    List<String> missing = new ArrayList<>();
    for (Path room : rooms()) {
      Path note = room.resolve("package-info.java");
      if (!Files.exists(note) && NOTES_TO_COME.contains(SOURCES.relativize(room).toString())) {
        continue;
      }
      String text = Files.exists(note) ? Files.readString(note) : "";
      String words = text.replaceAll("\\s*\\n \\* ?", " ");
      for (String heading : List.of("In:", "Out:", "Steps:", "Knows nothing of")) {
        if (!words.contains(heading)) {
          missing.add(SOURCES.relativize(room) + " lacks \"" + heading + "\"");
        }
      }
    }
    assertEquals(List.of(), missing);
  }

  private static List<Path> rooms() throws IOException {
    try (Stream<Path> paths = Files.walk(SOURCES)) {
      return paths
          .filter(path -> path.toString().endsWith(".java"))
          .filter(path -> !path.endsWith("package-info.java"))
          .map(Path::getParent)
          .distinct()
          .sorted()
          .toList();
    }
  }
}
