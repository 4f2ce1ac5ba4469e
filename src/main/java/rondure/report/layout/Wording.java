package rondure.report.layout;

import com.samskivert.mustache.Mustache;
import com.samskivert.mustache.MustacheException;
import com.samskivert.mustache.Template;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import rondure.report.picture.PictureWords;

/**
 * The sentences of the report by key, from the wording files among the templates: lines of {@code
 * key = sentence with {{values}}}.
 */
public final class Wording implements PictureWords {
  private static final Mustache.Compiler COMPILER =
      Mustache.compiler().escapeHTML(false).withCollector(new ViewNames());
  private final String baseFile;
  private final Map<String, Sentence> sentences;

  /** A sentence and where it stands. */
  private record Sentence(String file, int line, Template template) {}

  private Wording(String baseFile, Map<String, Sentence> sentences) {
    this.baseFile = baseFile;
    this.sentences = sentences;
  }

  /**
   * @param files wording files; a key in a later one replaces that key of an earlier one
   */
  public static Wording of(TemplateFolder folder, List<String> files) throws TemplateProblem {
    Map<String, Sentence> sentences = new HashMap<>();
    for (String file : files) {
      read(folder, file, sentences);
    }
    return new Wording(files.get(0), sentences);
  }

  private static void read(TemplateFolder folder, String file, Map<String, Sentence> sentences)
      throws TemplateProblem {
    TemplateEngine.checkTagsClose(file, folder.text(file));
    int number = 0;
    for (String line : folder.text(file).split("\n", -1)) {
      number++;
      String text = line.strip();
      if (text.isEmpty() || text.startsWith("#")) {
        continue;
      }
      int equals = text.indexOf('=');
      if (equals < 1) {
        throw new TemplateProblem(
            file, number, "found \"" + text + "\"; expected key = sentence, or # and a remark.");
      }
      String words = text.substring(equals + 1).strip();
      try {
        Template template = COMPILER.compile(words);
        sentences.put(text.substring(0, equals).strip(), new Sentence(file, number, template));
      } catch (MustacheException e) {
        throw new TemplateProblem(
            file, number, e.getMessage() + "; expected {{values}} that open and close.");
      }
    }
  }

  @Override
  public String say(String key, Map<String, String> values) {
    Sentence sentence = sentences.get(key);
    if (sentence == null) {
      throw new WordingFault(
          new TemplateProblem(baseFile, 0, "lacks the key " + key + "; expected " + key + " = …"));
    }
    try {
      return sentence.template().execute(values);
    } catch (MustacheException e) {
      throw new WordingFault(
          new TemplateProblem(
              sentence.file(),
              sentence.line(),
              e.getMessage().replaceAll(" on line \\d+", "")
                  + "; expected only these values in "
                  + key
                  + ": "
                  + new TreeMap<>(values).keySet()));
    }
  }

  /** Whether there are words for this key. */
  public boolean has(String key) {
    return sentences.containsKey(key);
  }

  /** Words with values given as name, value, name, value… */
  public String say(String key, String... namesAndValues) {
    Map<String, String> values = new LinkedHashMap<>();
    for (int i = 0; i + 1 < namesAndValues.length; i += 2) {
      values.put(namesAndValues[i], namesAndValues[i + 1]);
    }
    return say(key, values);
  }

  /** "1 frame", "3 frames": key.one or key.many. */
  public String count(String key, int count) {
    return say(key + (count == 1 ? ".one" : ".many"), "count", Integer.toString(count));
  }

  /** A fault in a wording file, found in the middle of drawing or filling. */
  public static final class WordingFault extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final TemplateProblem problem;

    WordingFault(TemplateProblem problem) {
      super(problem.getMessage());
      this.problem = problem;
    }

    public TemplateProblem problem() {
      return problem;
    }
  }
}
