package rondure.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import rondure.intake.Fact;
import rondure.intake.ShotFacts;
import rondure.report.picture.TrailChart;
import rondure.sky.TrailRate;

/** Draws a table of trails: lines for its aims over the width of the star itself. */
final class TrailCharts {
  private static final String NAME = "trails";
  private static final int MOST_EXPOSURES = 3;

  private final ReportContext context;
  private final SceneFigures figures;
  private final double widthPx;

  private TrailCharts(ReportContext context, SceneFigures figures) {
    this.context = context;
    this.figures = figures;
    this.widthPx = figures.ownWidthPx().orElseThrow();
  }

  /**
   * Of the scene with most frames, of several the first; empty where no scene has a table.
   *
   * @param tabled the scenes that have one
   * @param heightPx of the picture
   */
  static Optional<CourseView.TrailPicture> of(
      ReportContext context, List<SceneFigures> tabled, long heightPx) {
    return tabled.stream()
        .sorted(Comparator.comparing((SceneFigures f) -> -f.scene().frames().size()))
        .findFirst()
        .map(figures -> new TrailCharts(context, figures).picture(tabled.size() > 1, heightPx));
  }

  private CourseView.TrailPicture picture(boolean isNamed, long heightPx) {
    TrailChart chart = chart();
    context.pictures().add(NAME, chart);
    String heading =
        isNamed
            ? say("course.chart.ofScene", "scene", SceneName.of(context.book(), figures.scene()))
            : say("course.chart");
    return new CourseView.TrailPicture(
        heading, new PictureView(NAME, alt(chart), context.pictureWidthPx(), heightPx));
  }

  private TrailChart chart() {
    List<TrailChart.Aim> aims = new ArrayList<>();
    Map<String, TrailRate> rates = TrailAims.of(figures, context.words());
    rates.forEach((name, rate) -> aims.add(aim(name, rate)));
    TrailChart.Width width =
        new TrailChart.Width(widthPx, say("course.chart.width", "width", Figures.px(widthPx)));
    return new TrailChart(
        aims,
        width,
        marks(),
        new TrailChart.Words(
            say("course.chart.exposure"),
            say("course.chart.trail"),
            say("course.chart.above"),
            say("course.chart.below")));
  }

  private TrailChart.Aim aim(String name, TrailRate rate) {
    String crossing =
        rate.secondsFor(widthPx).map(Figures::aboutExposure).orElseGet(() -> say("course.any"));
    return new TrailChart.Aim(
        name,
        say("course.chart.later", "aim", name, "exposure", crossing),
        rate,
        crossing,
        name.equals(say(TrailAims.OWN)));
  }

  /** The usual exposure first, then the rules of thumb, then other exposures. */
  private List<TrailChart.Exposure> marks() {
    List<TrailChart.Exposure> marks = new ArrayList<>();
    Optional<Double> usual = figures.usual(ShotFacts::exposureSeconds);
    usual.ifPresent(seconds -> marks.add(mark("course.ownExposure", seconds)));
    marks.addAll(rules());
    ownExposures(usual).forEach(seconds -> marks.add(mark("course.ownExposure", seconds)));
    return marks;
  }

  private List<TrailChart.Exposure> rules() {
    List<TrailChart.Exposure> rules = new ArrayList<>();
    Optional<Double> constant = TrailRules.constantSeconds(figures);
    Optional<Double> npf = TrailRules.npfSeconds(figures);
    boolean agree =
        constant.isPresent()
            && constant.map(Figures::aboutExposure).equals(npf.map(Figures::aboutExposure));
    if (agree) {
      rules.add(mark("course.chart.rules", constant.get()));
    } else {
      constant.ifPresent(seconds -> rules.add(mark("course.chart.rule500", seconds)));
      npf.ifPresent(seconds -> rules.add(mark("course.chart.ruleNpf", seconds)));
    }
    return rules;
  }

  private TrailChart.Exposure mark(String key, double seconds) {
    boolean isRule = !key.equals("course.ownExposure");
    String printed = isRule ? Figures.aboutExposure(seconds) : Figures.exposure(seconds);
    String words = say(key, "exposure", printed);
    return new TrailChart.Exposure(seconds, words, say("course.chart.farther", "what", words));
  }

  /** The other exposures of the scene; of many the shortest and the longest. */
  private List<Double> ownExposures(Optional<Double> usual) {
    List<Double> exposures =
        figures.frames().stream()
            .flatMap(frame -> frame.facts().exposureSeconds().map(Fact::value).stream())
            .filter(seconds -> seconds > 0 && usual.filter(seconds::equals).isEmpty())
            .distinct()
            .sorted()
            .toList();
    return exposures.size() < MOST_EXPOSURES
        ? exposures
        : List.of(exposures.get(0), exposures.get(exposures.size() - 1));
  }

  private String alt(TrailChart chart) {
    String crossings =
        chart.aims().stream()
            .map(a -> say("alt.trails.aim", "aim", a.name(), "exposure", a.crossing()))
            .collect(Collectors.joining("; "));
    String marks =
        chart.exposures().stream()
            .map(TrailChart.Exposure::words)
            .collect(Collectors.joining("; "));
    String text =
        say(
            "alt.trails",
            "most",
            Figures.aboutExposure(chart.mostSeconds()),
            "width",
            Figures.px(widthPx),
            "crossings",
            crossings);
    return marks.isEmpty() ? text : text + " " + say("alt.trails.marks", "marks", marks);
  }

  private String say(String key, String... values) {
    return context.words().say(key, values);
  }
}
