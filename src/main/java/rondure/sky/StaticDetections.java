package rondure.sky;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiPredicate;
import java.util.stream.Stream;
import rondure.base.RobustStats;
import rondure.sky.StaticReport.Finding;
import rondure.stars.AverageStar;
import rondure.stars.Detection;
import rondure.stars.Refusal;
import rondure.stars.Star;
import rondure.stars.StarField;

/**
 * Finds what stays on the sensor while the sky moves over it: hot pixels and lights on the ground.
 *
 * <p>A detection is static when it stays within {@link #STAY_RADIUS_PX} over at least three frames
 * in which the sky moved by more than {@link #LEAST_MOTION_PX}: by prediction, where the facts
 * tell, and as seen from how soon the other detections leave their places. The longer the scene,
 * the longer a spot must stay, so that slow stars near the pole are not taken for lamps. When
 * nearly everything stays, a shared motion of a fraction of a pixel, or hundreds of starlike
 * widths, prove stars (a tracking mount, the pole, a short span); without such proof nothing in the
 * frames follows the sky.
 */
public final class StaticDetections {

  /** A detection within this distance of its earlier place has stayed. */
  public static final double STAY_RADIUS_PX = 1;

  /** The sky must have moved by more than this before staying means anything. */
  public static final double LEAST_MOTION_PX = 3;

  /** Predicted motion from which a scene in which everything stays is suspect. */
  static final double TELLING_MOTION_PX = 10;

  private static final double LONGEST_DEMAND_PX = 40;
  private static final int SEEN_MOTION_LAGS = 4;
  private static final int LONGEST_DEMAND_LAGS = 20;
  private static final int LONGEST_DEMAND_FAST_FRAMES = 10;
  private static final int STARS_BEYOND_DOUBT = 100;
  private static final double STAR_WIDTH_BEYOND_DOUBT_PX = 1.6;
  private static final int SPREAD_STARS_BEYOND_DOUBT = 30;

  /** Demosaicing and compression spread one hot photosite to about 1.75 px. */
  private static final double SPREAD_STAR_WIDTH_BEYOND_DOUBT_PX = 1.9;

  private static final int SPREAD_COLUMNS = 4;
  private static final int SPREAD_ROWS = 3;
  private static final double LONE_SHARE_OF_MOVING_SKY = 0.15;
  private static final int LONE_PER_FRAME_OF_MOVING_SKY = 5;
  private static final double NARROW_SHARE = 0.6;
  private static final double NARROWEST_PX = 1.3;
  private static final double LARGEST_SHARE_LOST_BY_AVERAGE = 0.2;

  private final List<SceneFrame> frames;

  private StaticDetections(List<SceneFrame> frames) {
    this.frames = frames;
  }

  /**
   * Examines one scene.
   *
   * @param frames of one camera, lens, focal length and size, in time order
   */
  public static StaticReport examine(List<SceneFrame> frames) {
    return new StaticDetections(List.copyOf(frames)).examine();
  }

  private StaticReport examine() {
    if (frames.size() < 2) {
      return untouched(Finding.CANNOT_TELL);
    }
    SkyPace pace = pace();
    Optional<Double> span = frames.get(0).predictedMotionPx(frames.get(frames.size() - 1));
    int leastLag = Math.max(Math.min(2, frames.size() - 1), demandedLag(pace));
    SpotTracker tracker = new SpotTracker(STAY_RADIUS_PX, leastLag);
    for (int i = 0; i < frames.size(); i++) {
      tracker.add(i, Spots.of(frames.get(i).field()));
    }
    List<SpotTracker.Run> runs = tracker.finishAll();
    if (pace.isMoving() || othersNeverReturn(tracker)) {
      List<SpotTracker.Run> proven =
          runs.stream().filter(run -> outlastsTheSky(run, span)).toList();
      return remove(Finding.SKY_MOVES, proven);
    }
    return whenAllStays(pace, span, runs);
  }

  private SkyPace pace() {
    return SkyPace.of(frames.size(), this::starlike, STAY_RADIUS_PX);
  }

  private Spots starlike(int frame) {
    return Spots.of(frames.get(frame).field()).starlikeOnly();
  }

  /** Frames that a spot must span: 4 px of motion as seen, more when the scene is long. */
  private int demandedLag(SkyPace pace) {
    if (!pace.isMoving()) {
      return 2;
    }
    int half = (frames.size() - 1) / 2;
    if (pace.movesAtOnce()) {
      return clamp(half, 2, LONGEST_DEMAND_FAST_FRAMES);
    }
    return clamp(half, SEEN_MOTION_LAGS * pace.lagFrames(), LONGEST_DEMAND_LAGS * pace.lagFrames());
  }

  private boolean othersNeverReturn(SpotTracker tracker) {
    return frames.size() >= 3
        && tracker.loneShare() >= LONE_SHARE_OF_MOVING_SKY
        && tracker.loneCount() >= (long) LONE_PER_FRAME_OF_MOVING_SKY * frames.size();
  }

  /** The facts, where there are any, must agree that the sky moved away under the spot. */
  private boolean outlastsTheSky(SpotTracker.Run run, Optional<Double> span) {
    Optional<Double> motion = frames.get(run.first()).predictedMotionPx(frames.get(run.last()));
    if (run.seen() < 3) {
      return false;
    }
    if (motion.isEmpty() || span.isEmpty()) {
      return true;
    }
    double demand = Math.min(LONGEST_DEMAND_PX, Math.max(LEAST_MOTION_PX, span.get() / 2));
    return motion.get() > demand;
  }

  private StaticReport whenAllStays(
      SkyPace pace, Optional<Double> span, List<SpotTracker.Run> runs) {
    boolean longEnough = span.map(px -> px > TELLING_MOTION_PX).orElse(frames.size() >= 3);
    if (!pace.isStaying() || !longEnough || runs.isEmpty()) {
      return fewDetections(span, runs);
    }
    if (movesTogether() || starsBeyondDoubt()) {
      return untouched(Finding.SKY_STAYS);
    }
    return remove(Finding.NOTHING_FOLLOWS_THE_SKY, runs);
  }

  /** Too few to watch the sky by: what the facts prove to be static goes, the rest stays. */
  private StaticReport fewDetections(Optional<Double> span, List<SpotTracker.Run> runs) {
    if (span.isEmpty()
        || span.get() <= TELLING_MOTION_PX
        || starsBeyondDoubt()
        || movesTogether()) {
      return untouched(Finding.CANNOT_TELL);
    }
    List<SpotTracker.Run> proven = runs.stream().filter(run -> outlastsTheSky(run, span)).toList();
    return remove(Finding.CANNOT_TELL, proven);
  }

  /** Whether detections that nearly stay share a motion of a fraction of a pixel. */
  private boolean movesTogether() {
    int step = Math.max(1, frames.size() / 20);
    for (int i = 0; i < frames.size() - 1; i += step) {
      Spots here = starlike(i);
      for (int other :
          new int[] {i + 1, Math.min(i + step, frames.size() - 1), frames.size() - 1}) {
        Spots there = starlike(other);
        if (other > i && CommonShift.between(here, there, STAY_RADIUS_PX).isReal()) {
          return true;
        }
      }
    }
    return false;
  }

  /** Hundreds, or dozens all over the frame, wider than developing leaves any single photosite. */
  private boolean starsBeyondDoubt() {
    double[] counts = frames.stream().mapToDouble(f -> f.field().stars().size()).toArray();
    double count = RobustStats.median(counts);
    double width = starWidthPx();
    boolean many = count >= STARS_BEYOND_DOUBT && width > STAR_WIDTH_BEYOND_DOUBT_PX;
    return many
        || count >= SPREAD_STARS_BEYOND_DOUBT
            && width > SPREAD_STAR_WIDTH_BEYOND_DOUBT_PX
            && frames.stream().allMatch(StaticDetections::coversTheFrame);
  }

  /** Lamps stand along the horizon; stars stand in at least half of twelve parts of the frame. */
  private static boolean coversTheFrame(SceneFrame frame) {
    StarField field = frame.field();
    long cells =
        field.stars().stream()
            .map(
                star ->
                    (int) (SPREAD_COLUMNS * star.xPx() / field.widthPx())
                        + SPREAD_COLUMNS * (int) (SPREAD_ROWS * star.yPx() / field.heightPx()))
            .distinct()
            .count();
    return 2 * cells >= SPREAD_COLUMNS * SPREAD_ROWS;
  }

  private double starWidthPx() {
    double[] medians =
        frames.stream()
            .map(frame -> frame.field().stars())
            .filter(stars -> !stars.isEmpty())
            .mapToDouble(s -> RobustStats.median(s.stream().mapToDouble(Star::fwhmPx).toArray()))
            .toArray();
    return RobustStats.median(medians);
  }

  private StaticReport untouched(Finding finding) {
    List<Integer> none = frames.stream().map(frame -> 0).toList();
    return new StaticReport(
        finding, frames.stream().map(SceneFrame::field).toList(), none, List.of());
  }

  private StaticReport remove(Finding finding, List<SpotTracker.Run> runs) {
    // When nothing is a star, the scene's own width is no measure: 1.3 px is narrower than any lens
    // (0.4 px diffraction, pixel box and filter give 1.1 px at best).
    double narrowPx = finding == Finding.SKY_MOVES ? NARROW_SHARE * starWidthPx() : NARROWEST_PX;
    List<StaticSpot> spots = runs.stream().map(run -> spot(run, narrowPx)).toList();
    List<StarField> fields = new ArrayList<>(frames.size());
    List<Integer> removed = new ArrayList<>(frames.size());
    SpotsByFrame byFrame = new SpotsByFrame(spots);
    for (int i = 0; i < frames.size(); i++) {
      StarField before = frames.get(i).field();
      StarField after = without(before, byFrame.inFrame(i), narrowPx);
      fields.add(after);
      removed.add(before.stars().size() - after.stars().size());
    }
    return new StaticReport(finding, fields, removed, distinct(spots));
  }

  private static StaticSpot spot(SpotTracker.Run run, double narrowPx) {
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
    return Math.hypot(one.xPx() - two.xPx(), one.yPx() - two.yPx()) <= 2 * STAY_RADIUS_PX;
  }

  /**
   * A field without what is static.
   *
   * @param narrowPx narrower static lights are hot pixels, wider ones lamps
   */
  private static StarField without(
      StarField field, BiPredicate<Double, Double> isStatic, double narrowPx) {
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
        Stream.concat(lamps, lampsInSky).toList());
  }

  private static int clamp(int value, int least, int most) {
    return Math.max(least, Math.min(most, value));
  }
}
