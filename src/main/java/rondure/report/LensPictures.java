package rondure.report;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import rondure.base.Orientation;
import rondure.blur.FieldShape;
import rondure.night.NightFrame;
import rondure.report.layout.Wording;
import rondure.report.picture.LensField;
import rondure.report.picture.WidthLadder;
import rondure.report.picture.ZoneStars;
import rondure.report.picture.ZoneStars.ZoneStar;
import rondure.stars.AverageStar;
import rondure.stars.AverageStar.Zone;
import rondure.stars.StarField;

/** The pictures of a set-up: registers each and says its size and its spoken words. */
final class LensPictures {
  private static final long STARS_WIDTH = 372;
  private static final long STARS_HEIGHT = 172;
  private static final long LADDER_WIDTH = 268;
  private static final double FIELD_WIDTH = 340;
  private static final double FIELD_HEIGHT = 250;
  private static final int SCALE_STRIP = 15;
  private static final long SCALE_WIDTH = 260;
  private static final double[] HALF_SIDES_PX = {5, 8, 12, 20, 32};
  private static final List<Zone> ZONES = List.of(Zone.CENTRE, Zone.MIDWAY, Zone.EDGE);
  private static final double WHOLE = 2;

  private final ReportContext context;
  private final Wording words;
  private final LensSetup setup;
  private final NightFrame frame;
  private final Orientation orientation;
  private final int number;

  /**
   * @param sample the frame whose stars are shown
   * @param number of the block
   */
  LensPictures(ReportContext context, LensSetup setup, NightFrame sample, int number) {
    this.context = context;
    this.words = context.words();
    this.setup = setup;
    this.frame = sample;
    this.orientation = sample.facts().orientation();
    this.number = number;
  }

  /** Average stars of the parts of the frame; none where no part has one. */
  List<PictureView> stars() {
    StarField field = frame.measurement().orElseThrow().field();
    List<ZoneStar> stars = ZONES.stream().map(zone -> zoneStar(field, zone)).toList();
    List<AverageStar> drawn = stars.stream().flatMap(s -> s.average().stream()).toList();
    if (drawn.isEmpty()) {
      return List.of();
    }
    String name = "lens-stars-" + number;
    context.pictures().add(name, new ZoneStars(stars, orientation, halfSidePx(drawn), words));
    List<String> said =
        stars.stream().map(s -> s.name() + " " + String.join(", ", s.lines())).toList();
    String alt = words.say("alt.lensStars", "zones", String.join("; ", said));
    return List.of(new PictureView(name, alt, STARS_WIDTH, STARS_HEIGHT));
  }

  private ZoneStar zoneStar(StarField field, Zone zone) {
    Optional<AverageStar> average =
        field.averageStars().stream().filter(a -> a.zone() == zone).findFirst();
    Optional<FieldShape> shape = shape(field, zone);
    List<String> lines =
        shape
            .map(
                s ->
                    List.of(
                        words.say("value.width", "px", Figures.px(s.fwhmPx())),
                        words.say("lens.roundness", "roundness", Figures.fixed(2, s.roundness()))))
            .orElseGet(() -> List.of(words.say("lens.fewStars")));
    return new ZoneStar(words.say("picture.zone." + zone), average, lines);
  }

  private static Optional<FieldShape> shape(StarField field, Zone zone) {
    return switch (zone) {
      case WHOLE -> FieldShape.between(field, -1, WHOLE);
      case CENTRE -> FieldShape.between(field, -1, FieldShape.CENTRE_LIMIT);
      case MIDWAY -> FieldShape.between(field, FieldShape.CENTRE_LIMIT, FieldShape.EDGE_LIMIT);
      case EDGE -> FieldShape.between(field, FieldShape.EDGE_LIMIT, WHOLE);
    };
  }

  /** The least of a few sizes that holds the stars with room, within what was kept of them. */
  private double halfSidePx(List<AverageStar> drawn) {
    StarField field = frame.measurement().orElseThrow().field();
    double widest =
        ZONES.stream()
            .flatMap(zone -> shape(field, zone).stream())
            .mapToDouble(shape -> shape.fwhmPx() / Math.sqrt(Math.max(0.1, shape.roundness())))
            .max()
            .orElse(2);
    double largest =
        drawn.stream()
            .mapToDouble(star -> star.stamp().sidePx() / (2.0 * star.samplesPerPx()))
            .max()
            .orElseThrow();
    double half =
        Arrays.stream(HALF_SIDES_PX).filter(size -> size >= 1.7 * widest).findFirst().orElse(64);
    return Math.min(half, largest);
  }

  /** Widths beside each other. */
  PictureView ladder(WidthLadder ladder) {
    String name = "lens-widths-" + number;
    context.pictures().add(name, ladder);
    List<String> said = ladder.rungs().stream().map(r -> r.name() + " " + r.number()).toList();
    String alt = words.say("alt.lensWidths", "widths", String.join("; ", said));
    return new PictureView(name, alt, LADDER_WIDTH, ladder.heightPx());
  }

  /** What the lens alone makes of a star over the frame. */
  PictureView field(LensModel lens) {
    String name = "lens-field-" + number;
    List<LensField.Place> places = LensPlaces.of(setup, lens);
    context
        .pictures()
        .add(name, new LensField(places, setup.widthPx(), setup.heightPx(), orientation, words));
    double wide = orientation.displayWidthPx(setup.widthPx(), setup.heightPx());
    double high = orientation.displayHeightPx(setup.widthPx(), setup.heightPx());
    double scale = Math.min(FIELD_WIDTH / wide, FIELD_HEIGHT / high);
    String alt =
        words.say(
            "alt.lensField",
            "places",
            Integer.toString(places.size()),
            "centre",
            Figures.px(lens.widthAt(0, 0, 1)),
            "corner",
            Figures.px(lens.cornerWidthPx(1)),
            "unseen",
            Long.toString(places.stream().filter(place -> !place.seen()).count()));
    long height = Math.round(high * scale) + SCALE_STRIP + 1;
    long width = Math.max(SCALE_WIDTH, Math.round(wide * scale) + 1);
    return new PictureView(name, alt, width, height);
  }
}
