package rondure.report;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import rondure.intake.CaptureTime;
import rondure.night.FocusSeries;
import rondure.night.FocusSeries.Point;
import rondure.night.FocusSeries.Steps;
import rondure.night.NightFrame;
import rondure.report.picture.FocusChart;
import rondure.stars.AverageStar;

/** Makes the view of the focus test series. */
final class SeriesPage {
  private static final int WIDTH = 655;
  private static final int HEIGHT = 330;

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
    String axis = series.steps() == Steps.FROM_FIELD ? "discs" : "steps";
    boolean counted = series.steps() == Steps.UNKNOWN;
    context
        .pictures()
        .add(
            name,
            new FocusChart(
                series.points().stream().map(this::point).toList(),
                series.curve(),
                context.words().say("series.axis." + (counted ? "frames" : axis)),
                context.words().say("series.axis.moment")));
    String alt =
        context
            .words()
            .say(
                "alt.series",
                "frames",
                context.words().count("count.frame", series.points().size()),
                "answer",
                words.answer());
    return new PictureView(name, alt, WIDTH, HEIGHT);
  }

  private FocusChart.Point point(Point point) {
    NightFrame frame = context.book().frames().get(point.frame());
    Optional<AverageStar> star =
        frame.measurement().stream()
            .flatMap(m -> m.field().averageStars().stream())
            .filter(average -> average.zone() == AverageStar.Zone.WHOLE)
            .findFirst();
    return new FocusChart.Point(
        point.position(),
        point.px2(),
        point.errorPx2(),
        point.frame() == series.bestFrame(),
        star,
        frame.facts().orientation());
  }
}
