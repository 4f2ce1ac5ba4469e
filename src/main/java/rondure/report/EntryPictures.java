package rondure.report;

import java.util.Comparator;
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
import rondure.report.picture.RegionOverlay;
import rondure.stars.AverageStar;
import rondure.stars.StarField;

/** The pictures of one frame's entry: registers each and says its size and its spoken words. */
final class EntryPictures {
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
  private final NightFrame frame;
  private final int position;
  private final FrameShape shape;
  private final FrameMeasurement measurement;
  private final StarField field;
  private final Orientation orientation;

  /**
   * @param frame measured
   * @param position the frame's place in the book
   */
  EntryPictures(ReportContext context, NightFrame frame, int position) {
    this.context = context;
    this.words = context.words();
    this.frame = frame;
    this.position = position;
    this.shape = frame.shape().orElseThrow();
    this.measurement = frame.measurement().orElseThrow();
    this.field = measurement.field();
    this.orientation = frame.facts().orientation();
  }

  /** The bar of the blur budget, where there is one. */
  List<PictureView> budget() {
    if (frame.budget().isEmpty()) {
      return List.of();
    }
    Terms terms = frame.budget().get().sky();
    String name = "budget-" + position;
    context.pictures().add(name, new BudgetBar(terms, words));
    String alt = words.say("alt.budget", "terms", BudgetWords.terms(terms, words));
    return List.of(new PictureView(name, alt, BUDGET_WIDTH, BUDGET_HEIGHT));
  }

  private long[] shown() {
    double wide = orientation.displayWidthPx(field.widthPx(), field.heightPx());
    double high = orientation.displayHeightPx(field.widthPx(), field.heightPx());
    double scale = Math.min(PHOTO_WIDTH / wide, PHOTO_HEIGHT / high);
    return new long[] {Math.round(wide * scale), Math.round(high * scale)};
  }

  /** The photograph itself, where the file could be shown. */
  List<PictureView> photographs() {
    if (!Photographs.canBeShown(measurement.thumbnail())) {
      return List.of();
    }
    long[] shown = shown();
    String name = "thumbnail-" + position;
    context.pictures().add(name, measurement.thumbnail());
    String alt = words.say("alt.photograph", "file", frame.file());
    return List.of(new PictureView(name, alt, shown[0], shown[1]));
  }

  /** Where sky and ground are. */
  PictureView regions() {
    String name = "regions-" + position;
    context.pictures().add(name, new RegionOverlay(field, orientation, words));
    long[] shown = shown();
    String alt =
        words.say(
            "alt.regions", "file", frame.file(), "sky", Figures.percent(field.sky().skyShare()));
    return new PictureView(name, alt, shown[0], shown[1]);
  }

  /** An ellipse for each star, scaled by the scene's sharpest. */
  PictureView map(Scene scene) {
    String name = "ellipses-" + position;
    context
        .pictures()
        .add(name, new EllipseMap(field, orientation, context.referenceFwhmPx(scene), words));
    long[] shown = shown();
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
            new CauseWords(words).slope(shape.elongationAngleDeg()));
    return new PictureView(
        name, alt, Math.max(MAP_WIDTH_LEAST, shown[0] + 1), shown[1] + MAP_SCALE_STRIP + 1);
  }

  /** The wheel of directions. */
  PictureView fan() {
    String name = "fan-" + position;
    context.pictures().add(name, new DirectionFan(field.stars(), orientation));
    return new PictureView(name, words.say("alt.fan", "words", fanWords()), FAN, FAN);
  }

  /** What the wheel says. */
  String fanWords() {
    double coherence = shape.directionCoherence();
    String strength = coherence >= 0.6 ? "fan.strong" : coherence >= 0.3 ? "fan.some" : "fan.none";
    if (coherence >= 0.3 && shape.roundness() >= NEARLY_ROUND_FROM) {
      strength = "fan.round";
    }
    return words.say(strength, "slope", new CauseWords(words).slope(shape.elongationAngleDeg()));
  }

  /** Average stars of the parts of the frame. */
  List<PictureView> averageStars() {
    List<AverageStar> zones =
        field.averageStars().stream()
            .filter(average -> average.zone() != AverageStar.Zone.WHOLE)
            .sorted(Comparator.comparing(AverageStar::zone))
            .toList();
    List<AverageStar> row = zones.isEmpty() ? field.averageStars() : zones;
    if (row.isEmpty()) {
      return List.of();
    }
    String name = "stars-" + position;
    context.pictures().add(name, new AverageStarRow(row, orientation, halfSidePx(row), words));
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

  /** The least of a few sizes that holds the stars with room, within what was kept of them. */
  private double halfSidePx(List<AverageStar> row) {
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
    return Math.min(half, largest);
  }

  private String px(Optional<Double> width) {
    return width
        .map(px -> words.say("value.width", "px", Figures.px(px)))
        .orElse(words.say("unknown"));
  }
}
