package rondure.report.layout;

import com.samskivert.mustache.Escapers;
import com.samskivert.mustache.Mustache;
import com.samskivert.mustache.MustacheException;
import com.samskivert.mustache.MustacheParseException;
import com.samskivert.mustache.Template;
import java.io.StringReader;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Fills Mustache templates from view records; a fault names file, line and what was expected. */
public final class TemplateEngine {
  private static final Pattern TAG = Pattern.compile("\\{\\{\\{?[^}]*}?}}");
  private static final Pattern LINE_IN_MESSAGE = Pattern.compile(" @ line (\\d+)|line (\\d+)");
  private final TemplateFolder folder;
  private final Mustache.Compiler compiler;
  private final Map<String, Template> compiled = new HashMap<>();
  private final Map<String, String> texts = new HashMap<>();

  public TemplateEngine(TemplateFolder folder) {
    this.folder = folder;
    this.compiler =
        Mustache.compiler()
            .withCollector(new ViewNames())
            .withEscaper(text -> Escapers.HTML.escape(Glyphs.legible(text)))
            .strictSections(true)
            .emptyStringIsFalse(true)
            .withLoader(name -> new StringReader(checkedText(name + ".html")));
  }

  /**
   * The template filled with the view.
   *
   * @param file name inside the templates folder
   * @param view a record (names = its components) or a map
   * @throws TemplateProblem when the template is broken or asks for a name the view does not have
   */
  public String fill(String file, Object view) throws TemplateProblem {
    try {
      Template template = compiled.get(file);
      if (template == null) {
        template = compiler.compile(checkedText(file));
        compiled.put(file, template);
      }
      return template.execute(view);
    } catch (MustacheException e) {
      throw explained(e, file, view);
    }
  }

  /** The text of a template, once it is known to be well formed by itself. */
  private String checkedText(String file) throws TemplateProblem {
    String known = texts.get(file);
    if (known != null) {
      return known;
    }
    String text = folder.text(file);
    texts.put(file, text);
    checkTagsClose(file, text);
    Xhtml.checkFragment(file, blankTags(text));
    return text;
  }

  /** Refuses braces that open and never close, or the other way round: they would be printed. */
  static void checkTagsClose(String file, String text) throws TemplateProblem {
    String[] lines = blankTags(text).split("\n", -1);
    for (int i = 0; i < lines.length; i++) {
      if (lines[i].contains("{{") || lines[i].contains("}}")) {
        throw new TemplateProblem(
            file, i + 1, "found braces without their partners; expected {{name}}.");
      }
    }
  }

  /** The text with every tag replaced by as many blanks, so that lines stay where they are. */
  private static String blankTags(String text) {
    return TAG.matcher(text)
        .replaceAll(tag -> Matcher.quoteReplacement(tag.group().replaceAll("[^\\n]", " ")));
  }

  private TemplateProblem explained(MustacheException e, String file, Object view) {
    for (Throwable cause = e; cause != null; cause = cause.getCause()) {
      if (cause instanceof TemplateProblem problem) {
        return problem;
      }
    }
    if (e instanceof MustacheException.Context context) {
      return new TemplateProblem(
          fileHolding(context.key, context.lineNo, file),
          context.lineNo,
          "found {{"
              + context.key
              + "}}, which has no value here; expected one of the names listed in README.md of"
              + " the templates"
              + namesOf(view));
    }
    if (e instanceof MustacheParseException) {
      return new TemplateProblem(
          file, lineOf(e.getMessage()), e.getMessage() + "; expected tags that open and close.");
    }
    return new TemplateProblem(file, 0, String.valueOf(e.getMessage()));
  }

  /** The file whose line holds the tag: the template itself or one it includes. */
  private String fileHolding(String key, int line, String file) {
    for (String candidate : texts.keySet().stream().sorted().toList()) {
      String[] lines = texts.get(candidate).split("\n", -1);
      if (line >= 1 && line <= lines.length && lines[line - 1].contains(key)) {
        if (candidate.equals(file) || !holds(file, key, line)) {
          return candidate;
        }
      }
    }
    return file;
  }

  private boolean holds(String file, String key, int line) {
    String[] lines = texts.getOrDefault(file, "").split("\n", -1);
    return line >= 1 && line <= lines.length && lines[line - 1].contains(key);
  }

  private static String namesOf(Object view) {
    if (view instanceof Map<?, ?> map) {
      return " (here: "
          + String.join(", ", map.keySet().stream().map(String::valueOf).sorted().toList())
          + ")";
    }
    if (view.getClass().isRecord()) {
      StringBuilder names = new StringBuilder();
      for (var component : view.getClass().getRecordComponents()) {
        names.append(names.length() == 0 ? "" : ", ").append(component.getName());
      }
      return " (here: " + names + ")";
    }
    return "";
  }

  private static int lineOf(String message) {
    Matcher matcher = LINE_IN_MESSAGE.matcher(String.valueOf(message));
    if (!matcher.find()) {
      return 0;
    }
    return Integer.parseInt(matcher.group(1) != null ? matcher.group(1) : matcher.group(2));
  }
}
