package rondure.sky;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiPredicate;
import java.util.stream.Stream;
import rondure.sky.StaticReport.Finding;
import rondure.stars.AverageStar;
import rondure.stars.Detection;
import rondure.stars.Refusal;
import rondure.stars.Star;
import rondure.stars.StarField;
import rondure.stars.Surroundings;

/** Takes what is proven to be static out of the star lists of a scene. */
final class StaticRemoval {
  private static final double NARROW_SHARE = 0.6;
  private static final double NARROWEST_PX = 1.3;
  private static final double LARGEST_SHARE_LOST_BY_AVERAGE = 0.2;

  private final List<SceneFrame> frames;
  private final Finding finding;
  private final double narrowPx;

  /**
   * @param starWidthPx median width of what was taken for stars, px
   */
  StaticRemoval(List<SceneFrame> frames, Finding finding, double starWidthPx) {
    this.frames = List.copyOf(frames);
    this.finding = finding;
    // When nothing is a star, the scene's own width is no measure: 1.3 px is narrower than any lens
    // (0.4 px diffraction, pixel box and filter give 1.1 px at best).
    this.narrowPx = finding == Finding.SKY_MOVES ? NARROW_SHARE * starWidthPx : NARROWEST_PX;
  }

  /** The scene without the runs. */
  StaticReport of(List<SpotTracker.Run> runs) {
    List<StaticSpot> spots = runs.stream().map(run -> spot(run)).toList();
    List<StarField> fields = new ArrayList<>(frames.size());
    List<Integer> removed = new ArrayList<>(frames.size());
    SpotsByFrame byFrame = new SpotsByFrame(spots);
    for (int i = 0; i < frames.size(); i++) {
      StarField before = frames.get(i).field();
      StarField after = without(before, byFrame.inFrame(i));
      fields.add(after);
      removed.add(before.stars().size() - after.stars().size());
    }
    return new StaticReport(finding, fields, removed, distinct(spots));
  }

  private StaticSpot spot(SpotTracker.Run run) {
    StaticSpot.Kind kind =
        run.widthPx() < narrowPx ? StaticSpot.Kind.HOT_PIXEL : StaticSpot.Kind.GROUND_LIGHT;
    Optional<Double> width =
        Double.isNaN(run.widthPx()) ? Optional.empty() : Optional.of(run.widthPx());
    return new StaticSpot(run.xPx(), run.yPx(), kind, run.first(), run.last(), run.seen(), width);
  }

  private static List<StaticSpot> distinct(List<StaticSpot> spots) {
    List<StaticSpot> kept = new ArrayList<>();
    spots.stream()
        .sorted(Comparator.comparingInt(StaticSpot::seenCount).reversed())
        .filter(spot -> kept.stream().noneMatch(k -> isSamePlace(k, spot)))
        .forEach(kept::add);
    return kept;
  }

  private static boolean isSamePlace(StaticSpot one, StaticSpot two) {
    return Math.hypot(one.xPx() - two.xPx(), one.yPx() - two.yPx())
        <= 2 * StaticDetections.STAY_RADIUS_PX;
  }

  /** A field without what is static: narrow lights are hot pixels, wider ones lamps. */
  private StarField without(StarField field, BiPredicate<Double, Double> isStatic) {
    List<Star> kept = new ArrayList<>();
    List<Star> gone = new ArrayList<>();
    for (Star star : field.stars()) {
      (isStatic.test(star.xPx(), star.yPx()) ? gone : kept).add(star);
    }
    List<Detection> others = new ArrayList<>(field.others());
    gone.forEach(s -> others.add(new Detection(s.xPx(), s.yPx(), s.fluxCounts(), Refusal.STATIC)));
    Map<Refusal, Integer> refused = new HashMap<>(field.refused());
    if (!gone.isEmpty()) {
      refused.merge(Refusal.STATIC, gone.size(), Integer::sum);
    }
    // The pictures of average stars were made with the static ones; drop them when those were many.
    boolean spoiled = gone.size() > LARGEST_SHARE_LOST_BY_AVERAGE * field.stars().size();
    List<AverageStar> averages = spoiled ? List.of() : field.averageStars();
    // What moves outside the sky is a star there after all.
    Stream<Star> lamps = field.groundLights().stream().filter(s -> isStatic.test(s.xPx(), s.yPx()));
    Stream<Star> lampsInSky = gone.stream().filter(s -> s.fwhmPx() >= narrowPx);
    return new StarField(
        field.widthPx(),
        field.heightPx(),
        kept,
        others,
        refused,
        field.sky(),
        field.mask(),
        averages,
        Stream.concat(lamps, lampsInSky).toList(),
        spoiled ? Surroundings.NONE : field.surroundings());
  }
}
