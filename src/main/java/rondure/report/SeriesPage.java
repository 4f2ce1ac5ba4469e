package rondure.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import rondure.intake.CaptureTime;
import rondure.night.FocusSeries;
import rondure.night.FocusSeries.Point;
import rondure.night.FocusSeries.Steps;
import rondure.night.NightFrame;
import rondure.report.layout.Wording;
import rondure.report.picture.FocusChart;
import rondure.stars.AverageStar;

/** Makes the view of the focus test series. */
final class SeriesPage {
  private static final int WIDTH = 655;
  private static final int HEIGHT = 430;

  private final ReportContext context;
  private final FocusSeries series;

  private SeriesPage(ReportContext context, FocusSeries series) {
    this.context = context;
    this.series = series;
  }

  static SeriesView view(ReportContext context) {
    return new SeriesView(
        context.book().focusSeries().stream().map(s -> new SeriesPage(context, s).one()).toList());
  }

  private SeriesView.One one() {
    SeriesWords words = new SeriesWords(context, series);
    return new SeriesView.One(
        heading(), picture(words), caption(), words.answer(), words.sentences());
  }

  /** Without a curve the picture needs no explanation. */
  private String caption() {
    return series.curve().isPresent() ? context.words().say("series.caption") : "";
  }

  private String heading() {
    List<Point> points = series.points();
    return context
        .words()
        .say(
            series.named() ? "series.headingNamed" : "series.heading",
            "number",
            String.format(Locale.ROOT, "%d", series.number()),
            "frames",
            context.words().count("count.frame", points.size()),
            "first",
            frame(points.get(0)),
            "last",
            frame(points.get(points.size() - 1)));
  }

  private String frame(Point point) {
    NightFrame frame = context.book().frames().get(point.frame());
    Optional<String> time =
        frame.facts().captureTime().map(CaptureTime::local).map(Figures::clockSeconds);
    return time.map(
            clock -> context.words().say("event.frame", "file", frame.file(), "time", clock))
        .orElse(frame.file());
  }

  private PictureView picture(SeriesWords words) {
    String name = "series-" + series.number();
    FrameNames names = FrameNames.of(files());
    List<FocusChart.Point> points =
        series.points().stream().map(point -> point(point, names)).toList();
    context.pictures().add(name, new FocusChart(points, series.curve(), labels(words)));
    String alt =
        context
            .words()
            .say(
                "alt.series",
                "frames",
                context.words().count("count.frame", points.size()),
                "narrowest",
                narrowest(),
                "widest",
                widest(),
                "answer",
                words.answer());
    return new PictureView(name, alt, WIDTH, HEIGHT);
  }

  private List<String> files() {
    return series.points().stream()
        .map(p -> context.book().frames().get(p.frame()).file())
        .toList();
  }

  private FocusChart.Labels labels(SeriesWords words) {
    String axis = series.steps() == Steps.FROM_FIELD ? "discs" : "steps";
    boolean counted = series.steps() == Steps.UNKNOWN;
    Wording say = context.words();
    return new FocusChart.Labels(
        say.say("series.axis." + (counted ? "frames" : axis)),
        say.say("series.axis.moment"),
        say.say(
            series.curve().isPresent() ? "series.label.nearest" : "series.label.sharpest",
            "file",
            Figures.shortened(context.book().frames().get(series.bestFrame()).file(), 32)),
        words.minimum(),
        words
            .stepsBack()
            .map(back -> say.say("series.label.back", "back", Figures.fixed(1, back))));
  }

  private String narrowest() {
    return Figures.fixed(2, series.points().stream().mapToDouble(Point::px2).min().orElseThrow());
  }

  private String widest() {
    return Figures.fixed(2, series.points().stream().mapToDouble(Point::px2).max().orElseThrow());
  }

  private FocusChart.Point point(Point point, FrameNames names) {
    NightFrame frame = context.book().frames().get(point.frame());
    Optional<AverageStar> star =
        frame.measurement().stream()
            .flatMap(m -> m.field().averageStars().stream())
            .filter(average -> average.zone() == AverageStar.Zone.WHOLE)
            .findFirst();
    List<String> lines = new ArrayList<>(List.of(names.brief(frame.file())));
    frame
        .shape()
        .map(shape -> context.words().say("value.width", "px", Figures.px(shape.fwhmPx())))
        .ifPresent(lines::add);
    return new FocusChart.Point(
        point.position(),
        point.px2(),
        point.errorPx2(),
        point.frame() == series.bestFrame(),
        star,
        frame.facts().orientation(),
        lines);
  }
}
