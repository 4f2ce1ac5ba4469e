package rondure.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rondure.night.FocusSeries;
import rondure.night.FocusSeries.Curve;
import rondure.night.FocusSeries.Ending;
import rondure.night.FocusSeries.Others;
import rondure.night.FocusSeries.Point;
import rondure.night.FocusSeries.Side;
import rondure.night.FocusSeries.Steps;
import rondure.report.layout.Wording;

/** Says where best focus is, how sure that is, and what to do. */
final class SeriesWords {
  /** Nearer to a frame than this, in steps, there is nothing to turn. */
  private static final double NOTHING_TO_TURN = 0.15;

  private final ReportContext context;
  private final Wording words;
  private final FocusSeries series;

  SeriesWords(ReportContext context, FocusSeries series) {
    this.context = context;
    this.words = context.words();
    this.series = series;
  }

  /** The best frame, or the way to it. */
  String answer() {
    String key = series.curve().isPresent() ? "BOTH_SIDES" : series.ending() + ".noCurve";
    return words.say("series.answer." + key, "file", file(series.best()));
  }

  List<String> sentences() {
    List<String> sentences = new ArrayList<>();
    series.curve().ifPresent(curve -> sentences.add(between(curve)));
    sentences.add(words.say("series.steps." + series.steps() + told()));
    Optional<Curve> turned = series.curve().filter(c -> series.steps() != Steps.FROM_FIELD);
    turned.ifPresent(curve -> sentences.add(whatToDo(curve)));
    if (series.curve().isEmpty()) {
      sentences.add(words.say("series.next." + series.ending()));
    }
    if (!series.onTheWay().isEmpty()) {
      String frames = words.count("count.frame", series.onTheWay().size());
      sentences.add(words.say("series.onTheWay", "frames", frames));
    }
    series.others().forEach(stretch -> sentences.add(others(stretch)));
    return sentences;
  }

  private String told() {
    return series.steps() == Steps.UNKNOWN && series.ending() != Ending.BOTH_SIDES ? ".end" : "";
  }

  /** Twice the standard error, in the unit of the positions. */
  private String between(Curve curve) {
    Optional<Point> below = series.below(curve.at());
    Optional<Point> above = series.above(curve.at());
    boolean discs = series.steps() == Steps.FROM_FIELD;
    return words.say(
        discs ? "series.betweenDiscs" : "series.between",
        "below",
        below.map(this::file).orElse("?"),
        "above",
        above.map(this::file).orElse("?"),
        "behind",
        Figures.fixed(2, curve.at() - below.map(Point::position).orElse(0.0)),
        "error",
        Figures.fixed(2, 2 * curve.atError()),
        "least",
        Figures.fixed(2, curve.leastPx2()),
        "disc",
        Figures.fixed(2, curve.discPxPerStep()));
  }

  private String whatToDo(Curve curve) {
    Point last = series.points().get(series.points().size() - 1);
    return words.say(
        stepsBack().isEmpty() ? "series.do.near" : "series.do.turn",
        "file",
        file(series.best()),
        "last",
        file(last),
        "back",
        Figures.fixed(1, last.position() - curve.at()));
  }

  /**
   * Steps to turn back from the last frame; empty where a frame is as good, or nothing is known.
   */
  Optional<Double> stepsBack() {
    Point last = series.points().get(series.points().size() - 1);
    return series
        .curve()
        .filter(curve -> series.steps() != Steps.FROM_FIELD)
        .filter(curve -> Math.abs(series.best().position() - curve.at()) >= NOTHING_TO_TURN)
        .map(curve -> last.position() - curve.at());
  }

  /** Where the curve is lowest, and twice the standard error; nothing without a curve. */
  String minimum() {
    String unit = series.steps() == Steps.FROM_FIELD ? "discs" : "steps";
    return series
        .curve()
        .map(
            curve ->
                words.say(
                    "series.label.minimum." + unit,
                    "at",
                    Figures.fixed(2, curve.at()).replace('-', '−'),
                    "error",
                    Figures.fixed(2, 2 * curve.atError())))
        .orElse("");
  }

  private String others(Others stretch) {
    double perStep = series.curve().map(Curve::discPxPerStep).orElse(1.0);
    boolean steps = series.steps() != Steps.FROM_FIELD && stretch.side() != Side.AT_BEST;
    String off = words.say("series.off.disc", "disc", Figures.fixed(1, stretch.discPx()));
    String both =
        steps
            ? words.say(
                "series.off.steps",
                "disc",
                off,
                "steps",
                Figures.fixed(1, stretch.discPx() / perStep))
            : off;
    return words.say(
        "series.others." + stretch.side(),
        "frames",
        words.count("count.frame", stretch.frames()),
        "when",
        words.say(stretch.after() ? "series.after" : "series.before"),
        "off",
        both);
  }

  private String file(Point point) {
    return context.book().frames().get(point.frame()).file();
  }
}
