package rondure.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import rondure.intake.ShotFacts;
import rondure.night.Scene;
import rondure.report.CourseView.TrailRow;
import rondure.report.CourseView.TrailTable;
import rondure.sky.TrailRate;

/** How far stars trail by exposure and aim, a table for each of the largest scenes on a tripod. */
final class TrailTables {
  private static final int TABLES = 3;
  private static final int CUSTOMARY_ROWS = 5;

  private final ReportContext context;

  TrailTables(ReportContext context) {
    this.context = context;
  }

  /** Whether a table can be made: nothing follows the sky, and scale and width are known. */
  static boolean fits(SceneFigures figures) {
    return !figures.scene().isMounted()
        && figures.focalLengthPx().isPresent()
        && figures.ownWidthPx().filter(px -> px > 0).isPresent();
  }

  /** Scenes in order, at most three, those with most frames. */
  List<SceneFigures> chosen() {
    List<Integer> numbers =
        context.book().scenes().stream()
            .filter(scene -> fits(SceneFigures.of(context.book(), scene)))
            .sorted(Comparator.comparing((Scene scene) -> -scene.frames().size()))
            .limit(TABLES)
            .map(Scene::number)
            .toList();
    return context.book().scenes().stream()
        .filter(scene -> numbers.contains(scene.number()))
        .map(scene -> SceneFigures.of(context.book(), scene))
        .toList();
  }

  TrailTable table(SceneFigures figures) {
    double widthPx = figures.ownWidthPx().orElseThrow();
    Map<String, TrailRate> aims = TrailAims.of(figures, context.words());
    Optional<Double> usual = figures.usual(ShotFacts::exposureSeconds);
    List<TrailRow> rows = new ArrayList<>();
    for (double seconds : exposures(figures, widthPx, usual)) {
      boolean own = usual.filter(s -> s == seconds).isPresent();
      String name = Figures.exposure(seconds);
      List<String> cells = aims.values().stream().map(r -> cell(r, seconds, widthPx)).toList();
      rows.add(new TrailRow(own ? say("course.ownExposure", "exposure", name) : name, cells));
    }
    List<String> limits = aims.values().stream().map(rate -> limit(rate, widthPx)).toList();
    rows.add(new TrailRow(say("course.oneWidth"), limits));
    return new TrailTable(
        SceneName.of(context.book(), figures.scene()),
        say(
            figures.hasBudget() ? "course.trailTable" : "course.trailTable.asMeasured",
            "width",
            Figures.px(widthPx)),
        List.copyOf(aims.keySet()),
        rows,
        sentences(figures));
  }

  private static TreeSet<Double> exposures(
      SceneFigures figures, double widthPx, Optional<Double> usual) {
    TreeSet<Double> exposures = new TreeSet<>();
    TrailRate rate = new TrailRate(figures.focalLengthPx().orElseThrow(), 0);
    for (double seconds : rate.customarySeconds(widthPx, CUSTOMARY_ROWS)) {
      exposures.add(seconds);
    }
    usual.ifPresent(exposures::add);
    return exposures;
  }

  private String cell(TrailRate rate, double seconds, double widthPx) {
    double trailPx = rate.trailPx(seconds);
    return say(
        "course.trailCell",
        "trail",
        Figures.px(trailPx),
        "share",
        Figures.fixed(trailPx < widthPx ? 2 : 1, trailPx / widthPx));
  }

  private String limit(TrailRate rate, double widthPx) {
    return rate.secondsFor(widthPx).map(Figures::aboutExposure).orElseGet(() -> say("course.any"));
  }

  private List<String> sentences(SceneFigures figures) {
    List<String> sentences = new ArrayList<>();
    TrailRate equator = new TrailRate(figures.focalLengthPx().orElseThrow(), 0);
    TrailRules.constantSeconds(figures)
        .ifPresent(seconds -> sentences.add(rule("course.rule500", seconds, equator)));
    TrailRules.npfSeconds(figures)
        .ifPresent(seconds -> sentences.add(rule("course.ruleNpf", seconds, equator)));
    return sentences;
  }

  private String rule(String key, double seconds, TrailRate equator) {
    return say(
        key,
        "exposure",
        Figures.aboutExposure(seconds),
        "trail",
        Figures.px(equator.trailPx(seconds)));
  }

  private String say(String key, String... values) {
    return context.words().say(key, values);
  }
}
