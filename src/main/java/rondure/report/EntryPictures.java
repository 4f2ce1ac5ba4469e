package rondure.report;

import java.util.List;
import java.util.Optional;
import rondure.base.Orientation;
import rondure.blur.Budget;
import rondure.crew.FrameMeasurement;
import rondure.night.FrameShape;
import rondure.night.NightFrame;
import rondure.night.Scene;
import rondure.report.layout.Wording;
import rondure.report.picture.DirectionFan;
import rondure.report.picture.EllipseMap;
import rondure.report.picture.RegionOverlay;
import rondure.report.picture.SkyDirections;
import rondure.stars.StarField;

/** The pictures of one frame's entry: registers each and says its size and its spoken words. */
final class EntryPictures {
  private static final double PHOTO_WIDTH = 190;
  private static final double PHOTO_HEIGHT = 138;
  private static final int MAP_WIDTH_LEAST = 222;
  private static final int FAN = 102;
  private static final double NEARLY_ROUND_FROM = 0.85;

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
        name,
        alt,
        Math.max(MAP_WIDTH_LEAST, shown[0] + 2 * (long) EllipseMap.MARGIN),
        shown[1] + 2 * (long) EllipseMap.MARGIN + (long) EllipseMap.SCALE_STRIP);
  }

  /** The wheel of directions. */
  PictureView fan() {
    String name = "fan-" + position;
    context
        .pictures()
        .add(name, new DirectionFan(field.stars(), orientation, skyDirections(), words));
    return new PictureView(name, words.say("alt.fan", "words", fanWords()), FAN, FAN);
  }

  private Optional<SkyDirections> skyDirections() {
    return frame
        .budget()
        .flatMap(Budget::blur)
        .flatMap(blur -> SkyDirections.of(blur, field.stars(), orientation));
  }

  /** What the wheel says. */
  String fanWords() {
    double coherence = shape.directionCoherence();
    String strength = coherence >= 0.6 ? "fan.strong" : coherence >= 0.3 ? "fan.some" : "fan.none";
    if (coherence >= 0.3 && shape.roundness() >= NEARLY_ROUND_FROM) {
      strength = "fan.round";
    }
    String stretch =
        words.say(strength, "slope", new CauseWords(words).slope(shape.elongationAngleDeg()));
    return skyDirections().map(sky -> stretch + " " + skyWords(sky)).orElse(stretch);
  }

  private String skyWords(SkyDirections sky) {
    return words.say(
        sky.isOneWay() ? "fan.sky" : "fan.skyTurns",
        "slope",
        new CauseWords(words).slope(Math.toDegrees(sky.middleRad())));
  }
}
