package rondure.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rondure.base.Orientation;
import rondure.blur.Terms;
import rondure.crew.FrameMeasurement;
import rondure.night.FrameShape;
import rondure.night.NightFrame;
import rondure.night.Scene;
import rondure.report.layout.Wording;
import rondure.report.picture.AverageStarRow;
import rondure.report.picture.BudgetBar;
import rondure.report.picture.DirectionFan;
import rondure.report.picture.EllipseMap;
import rondure.report.picture.Mark;
import rondure.report.picture.RegionOverlay;
import rondure.stars.AverageStar;
import rondure.stars.StarField;

/** Makes the entry of one frame and registers its pictures. */
final class EntryMaker {
  private static final double PHOTO_WIDTH = 226;
  private static final double PHOTO_HEIGHT = 138;
  private static final int MAP_SCALE_STRIP = 14;
  private static final int MAP_WIDTH_LEAST = 245;
  private static final int FAN = 112;
  private static final double NEARLY_ROUND_FROM = 0.85;
  private static final int STARS_WIDTH = 300;
  private static final int STARS_HEIGHT = 106;
  private static final double[] HALF_SIDES_PX = {5, 8, 12, 20, 32, 64};
  private static final long BUDGET_WIDTH = 646;
  private static final long BUDGET_HEIGHT = 22;
  private final ReportContext context;
  private final Wording words;
  private final CauseWords causes;

  EntryMaker(ReportContext context) {
    this.context = context;
    this.words = context.words();
    this.causes = new CauseWords(words);
  }

  /**
   * @param position the frame's place in the book
   */
  EntryView entry(NightFrame frame, Scene scene, int position) {
    FrameShape shape = frame.shape().orElseThrow();
    FrameMeasurement measurement = frame.measurement().orElseThrow();
    StarField field = measurement.field();
    Orientation orientation = frame.facts().orientation();
    boolean teacher = context.settings().voice() == ReportSettings.Voice.TEACHER;
    return new EntryView(
        "frame-" + position,
        "note-" + String.format(java.util.Locale.ROOT, "%05d", position),
        words.say("entry.noteTitle", "file", frame.file()),
        context.mark(Mark.of(frame)),
        frame.file(),
        frame.grade().map(grade -> words.say("grade." + grade)).orElse(""),
        FactsLine.of(frame.facts(), words),
        causes.heading(frame),
        causes.sentences(frame, scene),
        budget(frame, position),
        photographs(frame, measurement, position),
        regions(frame, field, orientation, position),
        map(frame, scene, field, position),
        fan(shape, field, orientation, position),
        fanWords(shape),
        averageStars(shape, field, orientation, position),
        numbers(frame, shape),
        teacher ? causes.likelihoods(frame) : "");
  }

  private List<PictureView> budget(NightFrame frame, int position) {
    if (frame.budget().isEmpty()) {
      return List.of();
    }
    Terms terms = frame.budget().get().sky();
    String name = "budget-" + position;
    context.pictures().add(name, new BudgetBar(terms, words));
    String alt = words.say("alt.budget", "terms", BudgetWords.terms(terms, words));
    return List.of(new PictureView(name, alt, BUDGET_WIDTH, BUDGET_HEIGHT));
  }

  private static long[] shown(StarField field, Orientation orientation) {
    double wide = orientation.displayWidthPx(field.widthPx(), field.heightPx());
    double high = orientation.displayHeightPx(field.widthPx(), field.heightPx());
    double scale = Math.min(PHOTO_WIDTH / wide, PHOTO_HEIGHT / high);
    return new long[] {Math.round(wide * scale), Math.round(high * scale)};
  }

  private List<PictureView> photographs(
      NightFrame frame, FrameMeasurement measurement, int position) {
    if (!Photographs.canBeShown(measurement.thumbnail())) {
      return List.of();
    }
    long[] shown = shown(measurement.field(), frame.facts().orientation());
    String name = "thumbnail-" + position;
    context.pictures().add(name, measurement.thumbnail());
    String alt = words.say("alt.photograph", "file", frame.file());
    return List.of(new PictureView(name, alt, shown[0], shown[1]));
  }

  private PictureView regions(
      NightFrame frame, StarField field, Orientation orientation, int position) {
    String name = "regions-" + position;
    context.pictures().add(name, new RegionOverlay(field, orientation, words));
    long[] shown = shown(field, orientation);
    String alt =
        words.say(
            "alt.regions", "file", frame.file(), "sky", Figures.percent(field.sky().skyShare()));
    return new PictureView(name, alt, shown[0], shown[1]);
  }

  private PictureView map(NightFrame frame, Scene scene, StarField field, int position) {
    String name = "ellipses-" + position;
    Orientation orientation = frame.facts().orientation();
    context
        .pictures()
        .add(name, new EllipseMap(field, orientation, context.referenceFwhmPx(scene), words));
    long[] shown = shown(field, orientation);
    FrameShape shape = frame.shape().orElseThrow();
    String alt =
        words.say(
            "alt.map",
            "stars",
            Integer.toString(shape.starCount()),
            "width",
            Figures.px(shape.fwhmPx()),
            "roundness",
            Figures.fixed(2, shape.roundness()),
            "slope",
            causes.slope(shape.elongationAngleDeg()));
    return new PictureView(
        name, alt, Math.max(MAP_WIDTH_LEAST, shown[0] + 1), shown[1] + MAP_SCALE_STRIP + 1);
  }

  private PictureView fan(
      FrameShape shape, StarField field, Orientation orientation, int position) {
    String name = "fan-" + position;
    context.pictures().add(name, new DirectionFan(field.stars(), orientation));
    return new PictureView(name, words.say("alt.fan", "words", fanWords(shape)), FAN, FAN);
  }

  private String fanWords(FrameShape shape) {
    double coherence = shape.directionCoherence();
    String strength = coherence >= 0.6 ? "fan.strong" : coherence >= 0.3 ? "fan.some" : "fan.none";
    if (coherence >= 0.3 && shape.roundness() >= NEARLY_ROUND_FROM) {
      strength = "fan.round";
    }
    return words.say(strength, "slope", causes.slope(shape.elongationAngleDeg()));
  }

  private List<PictureView> averageStars(
      FrameShape shape, StarField field, Orientation orientation, int position) {
    List<AverageStar> zones =
        field.averageStars().stream()
            .filter(average -> average.zone() != AverageStar.Zone.WHOLE)
            .sorted(java.util.Comparator.comparing(AverageStar::zone))
            .toList();
    List<AverageStar> row = zones.isEmpty() ? field.averageStars() : zones;
    if (row.isEmpty()) {
      return List.of();
    }
    double needed = 1.7 * Math.max(Ranking.longAxisPx(shape), shape.fwhmEdgePx().orElse(0.0));
    double largest =
        row.stream()
            .mapToDouble(star -> star.stamp().sidePx() / (2.0 * star.samplesPerPx()))
            .max()
            .orElseThrow();
    double half = HALF_SIDES_PX[HALF_SIDES_PX.length - 1];
    for (int i = HALF_SIDES_PX.length - 1; i >= 0; i--) {
      half = HALF_SIDES_PX[i] >= needed ? HALF_SIDES_PX[i] : half;
    }
    String name = "stars-" + position;
    context
        .pictures()
        .add(name, new AverageStarRow(row, orientation, Math.min(half, largest), words));
    String alt =
        words.say(
            "alt.stars",
            "zones",
            Integer.toString(row.size()),
            "centre",
            px(shape.fwhmCentrePx()),
            "edge",
            px(shape.fwhmEdgePx()));
    return List.of(new PictureView(name, alt, STARS_WIDTH, STARS_HEIGHT));
  }

  private String zones(FrameShape shape) {
    Optional<String> centre = shape.fwhmCentrePx().map(Figures::px);
    Optional<String> edge = shape.fwhmEdgePx().map(Figures::px);
    if (centre.isPresent() && edge.isPresent()) {
      String key = centre.equals(edge) ? "value.zonesSame" : "value.zones";
      return words.say(key, "centre", centre.get(), "edge", edge.get());
    }
    return centre
        .map(px -> words.say("value.zonesCentre", "centre", px))
        .or(() -> edge.map(px -> words.say("value.zonesEdge", "edge", px)))
        .orElse(words.say("value.zonesUnknown"));
  }

  private String px(Optional<Double> width) {
    return width
        .map(px -> words.say("value.width", "px", Figures.px(px)))
        .orElse(words.say("unknown"));
  }

  private List<EntryView.Number> numbers(NightFrame frame, FrameShape shape) {
    List<EntryView.Number> numbers = new ArrayList<>();
    add(numbers, "stars", Integer.toString(shape.starCount()));
    add(
        numbers,
        "width",
        shape
            .fwhmArcsec()
            .map(
                arcsec ->
                    words.say(
                        "value.widthArcsec",
                        "px",
                        Figures.px(shape.fwhmPx()),
                        "arcsec",
                        Figures.fixed(arcsec < 9.95 ? 1 : 0, arcsec)))
            .orElse(words.say("value.width", "px", Figures.px(shape.fwhmPx()))));
    add(numbers, "roundness", Figures.fixed(2, shape.roundness()));
    add(
        numbers,
        "direction",
        words.say(
            "value.direction",
            "angle",
            Figures.fixed(0, shape.elongationAngleDeg()),
            "coherence",
            Figures.percent(shape.directionCoherence())));
    add(numbers, "zones", zones(shape));
    add(
        numbers,
        "trail",
        frame
            .trailPredictedPx()
            .map(trail -> words.say(trailKey(frame), "trail", Figures.px(trail)))
            .orElse(words.say("value.trailUnknown")));
    frame
        .budget()
        .ifPresent(budget -> add(numbers, "budget", BudgetWords.terms(budget.sky(), words)));
    add(numbers, "sky", Figures.smallPercent(shape.skyBackground()));
    return numbers;
  }

  /** A frame with a budget has its trail from the pole; else it is the longest there can be. */
  private static String trailKey(NightFrame frame) {
    return frame.budget().isPresent() ? "value.trailByPole" : "value.trail";
  }

  private void add(List<EntryView.Number> numbers, String key, String value) {
    numbers.add(new EntryView.Number(words.say("number." + key), value));
  }
}
