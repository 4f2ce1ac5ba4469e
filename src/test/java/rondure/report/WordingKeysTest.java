package rondure.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import rondure.report.layout.TemplateFolder;
import rondure.report.layout.TemplateProblem;

/** Each key is worded once, and each that the code names is worded. */
class WordingKeysTest {
  private static final Path REPORT = Path.of("src", "main", "java", "rondure", "report");
  private static final Pattern NAMED =
      Pattern.compile("\\b(?:say|count|between)\\(\\s*\"([A-Za-z.]*[A-Za-z])\"");
  private static final int LEAST_NAMED = 60;

  private static List<String> keys(String file) throws TemplateProblem {
    List<String> keys = new ArrayList<>();
    for (String line : TemplateFolder.of(Optional.empty()).text(file).split("\n")) {
      if (!line.startsWith("#") && line.contains("=")) {
        keys.add(line.substring(0, line.indexOf('=')).strip());
      }
    }
    return keys;
  }

  @Test
  void noFileWordsAKeyTwice() throws TemplateProblem {
    for (String file : List.of("wording-student.properties", "wording-teacher.properties")) {
      List<String> keys = keys(file);
      Set<String> once = new TreeSet<>();
      Set<String> twice = new TreeSet<>();
      keys.forEach(key -> (once.add(key) ? once : twice).add(key));
      assertEquals(Set.of(), twice, file);
    }
  }

  @Test
  void everyKeyThatTheCodeNamesIsWorded() throws IOException, TemplateProblem {
    List<String> worded = keys("wording-student.properties");
    Set<String> named = new TreeSet<>();
    try (Stream<Path> files = Files.walk(REPORT)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
        Matcher matcher = NAMED.matcher(Files.readString(file));
        while (matcher.find()) {
          named.add(matcher.group(1));
        }
      }
    }
    assertTrue(named.size() >= LEAST_NAMED, named.size() + " keys found in the code");
    for (String key : named) {
      boolean counted = worded.contains(key + ".one") || worded.contains(key + ".many");
      assertTrue(worded.contains(key) || counted, key + " is not worded");
    }
  }
}
