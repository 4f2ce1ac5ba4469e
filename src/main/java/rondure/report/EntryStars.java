package rondure.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import rondure.base.Orientation;
import rondure.blur.Budget;
import rondure.blur.ExplainedStar;
import rondure.blur.FrameBlur;
import rondure.night.FrameShape;
import rondure.night.NightFrame;
import rondure.report.layout.Wording;
import rondure.report.picture.AverageStarPair;
import rondure.report.picture.AverageStarRow;
import rondure.stars.AverageStar;
import rondure.stars.Star;
import rondure.stars.StarField;

/**
 * The average stars of one frame's entry: beside what the budget makes of them, where there is one.
 */
final class EntryStars {
  private static final long WIDTH = 193;
  private static final long ROW_HEIGHT = 90;
  private static final double[] HALF_SIDES_PX = {5, 8, 12, 20, 32, 64};
  private static final double EDGE_FROM = 0.75;
  private static final double CENTRE_TO = 0.4;

  /** An average star is made of its zone's brightest; a part of them shows how blur differs. */
  private static final int MOST_AVERAGED = 40;

  private static final int MOST_DRAWN = 10;

  private final ReportContext context;
  private final Wording words;
  private final NightFrame frame;
  private final FrameShape shape;
  private final StarField field;
  private final Orientation orientation;

  /**
   * @param frame measured
   */
  EntryStars(ReportContext context, NightFrame frame) {
    this.context = context;
    this.words = context.words();
    this.frame = frame;
    this.shape = frame.shape().orElseThrow();
    this.field = frame.measurement().orElseThrow().field();
    this.orientation = frame.facts().orientation();
  }

  /**
   * The picture, or none.
   *
   * @param position the frame's place in the book
   */
  List<PictureView> picture(int position) {
    String name = "stars-" + position;
    List<ExplainedStar> explained = explained();
    if (!explained.isEmpty()) {
      double half = halfSidePx(explained.stream().map(ExplainedStar::seen).toList());
      context.pictures().add(name, new AverageStarPair(explained, orientation, half, words));
      long height = Math.round(AverageStarPair.heightFor(WIDTH, explained.size()));
      return List.of(new PictureView(name, spoken(explained), WIDTH, height));
    }
    List<AverageStar> row = row();
    if (row.isEmpty()) {
      return List.of();
    }
    context.pictures().add(name, new AverageStarRow(row, orientation, halfSidePx(row), words));
    return List.of(new PictureView(name, spokenRow(row.size()), WIDTH, ROW_HEIGHT));
  }

  /** In the centre, or the next best, and at the edge; none without a budget. */
  List<ExplainedStar> explained() {
    Optional<FrameBlur> blur = frame.budget().flatMap(Budget::blur);
    if (blur.isEmpty()) {
      return List.of();
    }
    List<ExplainedStar> explained = new ArrayList<>();
    for (AverageStar average : chosen()) {
      List<Star> stars = drawn(average.zone(), blur.get());
      if (!stars.isEmpty()) {
        double[] xs = stars.stream().mapToDouble(Star::xPx).toArray();
        double[] ys = stars.stream().mapToDouble(Star::yPx).toArray();
        explained.add(ExplainedStar.of(average, blur.get().at(xs, ys)));
      }
    }
    return explained;
  }

  private List<AverageStar> chosen() {
    List<AverageStar> chosen = new ArrayList<>();
    List.of(AverageStar.Zone.CENTRE, AverageStar.Zone.MIDWAY, AverageStar.Zone.WHOLE).stream()
        .flatMap(zone -> average(zone).stream())
        .findFirst()
        .ifPresent(chosen::add);
    average(AverageStar.Zone.EDGE).ifPresent(chosen::add);
    return chosen;
  }

  private Optional<AverageStar> average(AverageStar.Zone zone) {
    return field.averageStars().stream().filter(star -> star.zone() == zone).findFirst();
  }

  /** A fair sample of the stars that stand in a zone's average. */
  private List<Star> drawn(AverageStar.Zone zone, FrameBlur blur) {
    List<Star> averaged =
        field.stars().stream().filter(star -> isIn(zone, star)).limit(MOST_AVERAGED).toList();
    int step = (averaged.size() + MOST_DRAWN - 1) / MOST_DRAWN;
    return IntStream.range(0, averaged.size())
        .filter(i -> i % step == 0)
        .mapToObj(averaged::get)
        .filter(star -> blur.sees(star.xPx(), star.yPx()))
        .toList();
  }

  private boolean isIn(AverageStar.Zone zone, Star star) {
    double centreX = (field.widthPx() - 1) / 2.0;
    double centreY = (field.heightPx() - 1) / 2.0;
    double out =
        Math.hypot(star.xPx() - centreX, star.yPx() - centreY) / Math.hypot(centreX, centreY);
    return switch (zone) {
      case WHOLE -> true;
      case CENTRE -> out < CENTRE_TO;
      case MIDWAY -> out >= CENTRE_TO && out <= EDGE_FROM;
      case EDGE -> out > EDGE_FROM;
    };
  }

  private List<AverageStar> row() {
    List<AverageStar> zones =
        field.averageStars().stream()
            .filter(average -> average.zone() != AverageStar.Zone.WHOLE)
            .sorted(Comparator.comparing(AverageStar::zone))
            .toList();
    return zones.isEmpty() ? field.averageStars() : zones;
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

  private String spoken(List<ExplainedStar> explained) {
    List<String> parts =
        explained.stream()
            .map(
                one ->
                    words.say(
                        "alt.pair.zone",
                        "zone",
                        words.say("picture.zone." + one.seen().zone()),
                        "share",
                        Figures.fixed(1, 100 * one.leftShare())))
            .toList();
    return words.say("alt.pair", "zones", String.join(", ", parts));
  }

  private String spokenRow(int zones) {
    return words.say(
        "alt.stars",
        "zones",
        Integer.toString(zones),
        "centre",
        px(shape.fwhmCentrePx()),
        "edge",
        px(shape.fwhmEdgePx()));
  }

  private String px(Optional<Double> width) {
    return width
        .map(px -> words.say("value.width", "px", Figures.px(px)))
        .orElse(words.say("unknown"));
  }
}
