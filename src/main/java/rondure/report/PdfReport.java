package rondure.report;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.time.LocalDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import rondure.base.FileTrouble;
import rondure.intake.CaptureTime;
import rondure.night.NightBook;
import rondure.night.NightFrame;
import rondure.report.ReportSettings.Voice;
import rondure.report.layout.DocumentFacts;
import rondure.report.layout.PdfLayout;
import rondure.report.layout.PdfLayout.FilledPage;
import rondure.report.layout.Pictures;
import rondure.report.layout.TemplateEngine;
import rondure.report.layout.TemplateFolder;
import rondure.report.layout.TemplateProblem;
import rondure.report.layout.Wording;
import rondure.report.picture.ReportFonts;

/** Writes the PDF report of a night. The same book and settings give the same bytes. */
public final class PdfReport {
  private static final String PAGE = "page.html";
  private static final int LONGEST_FOOTER = 80;

  /** The date of a report whose frames have no times: the same always. */
  private static final LocalDateTime NO_DATE = LocalDateTime.of(2000, 1, 1, 0, 0);

  private PdfReport() {}

  /**
   * Writes the report.
   *
   * @param book the night, measured and explained
   * @param settings how the report is to look
   * @param out where the PDF goes; stays open
   * @throws TemplateProblem when a template of the user is broken: file, line, what was expected
   * @throws IOException when the PDF cannot be written
   */
  public static void write(NightBook book, ReportSettings settings, OutputStream out)
      throws IOException {
    TemplateFolder folder = TemplateFolder.of(settings.templatesFolder());
    Wording words = Wording.of(folder, wordingFiles(settings.voice()));
    ReportContext context = new ReportContext(book, settings, words, new Pictures());
    try {
      FilledPage page = page(context, folder);
      PdfLayout.write(page, folder, context.pictures(), facts(context), out);
    } catch (Wording.WordingFault fault) {
      throw fault.problem();
    }
  }

  /** Everything that the report says, before it is laid out. */
  static FilledPage page(ReportContext context, TemplateFolder folder) throws TemplateProblem {
    return new FilledPage(PAGE, fill(context, new TemplateEngine(folder)));
  }

  /**
   * Loads the fonts, and tries the user's templates on a night without frames, so that most faults
   * in them show before the work of measuring.
   *
   * @throws IOException with one sentence when fonts or templates cannot be used
   */
  public static void prepare(ReportSettings settings) throws IOException {
    loadFonts();
    if (settings.templatesFolder().isPresent()) {
      NightBook empty =
          new NightBook(
              "", List.of(), List.of(), List.of(), Map.of(), Map.of(), List.of(), List.of(),
              List.of());
      write(empty, settings, OutputStream.nullOutputStream());
    }
  }

  private static void loadFonts() throws IOException {
    try {
      for (ReportFonts.Face face : ReportFonts.Face.values()) {
        face.font();
      }
    } catch (UncheckedIOException noPlace) {
      String why = FileTrouble.words(noPlace.getCause());
      throw new IOException("The report's fonts cannot be used: " + why + ".", noPlace);
    }
  }

  static List<String> wordingFiles(Voice voice) {
    return voice == Voice.TEACHER
        ? List.of("wording-student.properties", "wording-teacher.properties")
        : List.of("wording-student.properties");
  }

  private static String fill(ReportContext context, TemplateEngine templates)
      throws TemplateProblem {
    Set<String> fullEntries = Ranking.fullEntries(context.book(), context.settings());
    String glance = templates.fill("glance.html", GlancePage.view(context, fullEntries));
    boolean hasCourse = CoursePage.isWorthIt(context);
    String course = hasCourse ? templates.fill("course.html", CoursePage.view(context)) : "";
    LensView lenses = LensPage.view(context);
    String lens = lenses.blocks().isEmpty() ? "" : templates.fill("lens.html", lenses);
    List<SceneView> scenes = ScenePages.views(context, templates, fullEntries);
    boolean hasSeries = !context.book().focusSeries().isEmpty();
    String series = hasSeries ? templates.fill("series.html", SeriesPage.view(context)) : "";
    TablesView tables = TablesPage.view(context);
    return templates.fill(
        PAGE,
        new PageView(
            context.words().say("report.title", "input", context.book().inputName()),
            context.settings().pageSize() == ReportSettings.PageSize.A4 ? "A4" : "letter",
            Figures.shortened(context.book().inputName(), LONGEST_FOOTER),
            context.settings().softwareVersion(),
            new Bookmarks(context.words())
                .part("glance", true)
                .part("course", hasCourse)
                .part("lens", !lens.isEmpty())
                .scenes(scenes)
                .part("series", hasSeries)
                .tables(tables)
                .part("method", true)
                .inOrder(),
            glance,
            course,
            lens,
            templates.fill("scenes.html", Map.of("scenes", scenes)),
            series,
            tables.isEmpty() ? "" : templates.fill("tables.html", tables),
            templates.fill("method.html", MethodView.of(context))));
  }

  private static DocumentFacts facts(ReportContext context) {
    LocalDateTime date =
        context.book().frames().stream()
            .map(NightFrame::facts)
            .flatMap(facts -> facts.captureTime().stream())
            .map(CaptureTime::local)
            .max(Comparator.naturalOrder())
            .orElse(NO_DATE);
    return new DocumentFacts(
        context.words().say("report.title", "input", context.book().inputName()),
        "Rondure " + context.settings().softwareVersion(),
        date);
  }
}
