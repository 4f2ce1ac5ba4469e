package rondure.report;

import java.util.ArrayList;
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
import rondure.stars.Star;
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

  /** Places along the longer side; as many per length along the shorter. */
  private static final int PLACES = 7;

  /** Stars about a place that make it a measured one. */
  private static final int FEWEST = 3;

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
    List<LensField.Place> places = places(lens);
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

  private List<LensField.Place> places(LensModel lens) {
    double cell = Math.max(setup.widthPx(), setup.heightPx()) / (double) PLACES;
    int columns = (int) Math.max(1, Math.rint(setup.widthPx() / cell));
    int rows = (int) Math.max(1, Math.rint(setup.heightPx() / cell));
    int[] stars = counts(columns, rows);
    List<LensField.Place> places = new ArrayList<>();
    for (int i = 0; i < columns * rows; i++) {
      double right = (i % columns + 0.5) / columns;
      double down = (i / columns + 0.5) / rows;
      places.add(
          new LensField.Place(
              right * setup.widthPx() - 0.5,
              down * setup.heightPx() - 0.5,
              lens.star((2 * right - 1) * lens.sideX(), (2 * down - 1) * lens.sideY(), 1),
              stars[i] >= FEWEST));
    }
    return places;
  }

  /** Stars of all frames about each place. */
  private int[] counts(int columns, int rows) {
    int[] counts = new int[columns * rows];
    for (NightFrame one : setup.frames()) {
      for (Star star : one.measurement().orElseThrow().field().stars()) {
        int column = (int) ((star.xPx() + 0.5) / setup.widthPx() * columns);
        int row = (int) ((star.yPx() + 0.5) / setup.heightPx() * rows);
        int x = Math.max(0, Math.min(columns - 1, column));
        int y = Math.max(0, Math.min(rows - 1, row));
        counts[y * columns + x]++;
      }
    }
    return counts;
  }
}
