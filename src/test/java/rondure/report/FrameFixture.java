package rondure.report;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.Predicate;
import rondure.base.Moments;
import rondure.base.RobustStats;
import rondure.base.Stamp;
import rondure.blur.Budget;
import rondure.blur.Cause;
import rondure.blur.Evidence;
import rondure.blur.FrameBlur;
import rondure.blur.LensSurface;
import rondure.blur.StarBlur;
import rondure.blur.Terms;
import rondure.blur.Verdict;
import rondure.intake.ShotFacts;
import rondure.night.FrameShape;
import rondure.sky.Camera;
import rondure.sky.Direction;
import rondure.sky.Spin;
import rondure.stars.AverageStar;
import rondure.stars.Refusal;
import rondure.stars.SkyMask;
import rondure.stars.SkyState;
import rondure.stars.Star;
import rondure.stars.StarField;

/** The stars of one invented frame, 6000 x 4000 px, with the pattern of one cause. */
final class FrameFixture {
  static final int WIDTH = 6000;
  static final int HEIGHT = 4000;
  private static final int MESH = 64;
  private static final int STARS = 260;

  /** What softens the frame. */
  enum Kind {
    SHARP,
    DEFOCUSED,
    TRAILED,
    SHAKEN,
    SOFT_EDGES,
    HAZY,
    UNDECIDED
  }

  private final Kind kind;
  private final ShotFacts facts;
  private final StarField field;
  private final FrameShape shape;

  FrameFixture(Kind kind, ShotFacts facts, Random random) {
    this.kind = kind;
    this.facts = facts;
    List<Star> stars = new ArrayList<>();
    double sharpness = 0.92 + 0.16 * random.nextDouble();
    while (stars.size() < STARS) {
      double x = random.nextDouble() * WIDTH;
      double y = random.nextDouble() * HEIGHT;
      if (isSky(x, y)) {
        stars.add(star(x, y, stars.size(), sharpness, random));
      }
    }
    this.field =
        new StarField(
            WIDTH,
            HEIGHT,
            stars,
            List.of(),
            Map.of(Refusal.SATURATED, 14, Refusal.CROWDED, 31),
            new SkyState(410, 21, kind == Kind.HAZY ? 0.085 : 0.041, 0.74, 0),
            mask(),
            averages(stars),
            List.of());
    this.shape = shapeOf(stars);
  }

  StarField field() {
    return field;
  }

  FrameShape shape() {
    return shape;
  }

  /** Terms in rough agreement with the kind. */
  Budget budget() {
    double excess = kind == Kind.SHARP ? 0.15 : 1.9;
    Terms terms =
        new Terms(
            0.82,
            kind == Kind.DEFOCUSED ? excess : 0.03,
            kind == Kind.TRAILED || kind == Kind.UNDECIDED ? excess : 0.06,
            kind == Kind.SHAKEN ? excess : 0.02,
            kind == Kind.SOFT_EDGES ? excess : 0.12,
            kind == Kind.HAZY ? excess : 0,
            0.01);
    Terms error = new Terms(0.03, 0.04, 0.02, 0.02, 0.03, 0.01, 0.02);
    return new Budget(terms, terms, error, 1.1, 0.7, 0.2, 0.96, 40, false, Optional.of(blur()));
  }

  /** Of the same stars, about. */
  private FrameBlur blur() {
    Camera camera = Camera.rectilinear(4012.5, WIDTH, HEIGHT);
    double disc = kind == Kind.DEFOCUSED ? 6.4 : 0.4;
    LensSurface lens = new LensSurface(0.4, 0.2, 1.5, 0.8, 0.3);
    Spin sky = Spin.ofSky(Direction.of(0.1, -0.8, 0.59));
    Moments shake = kind == Kind.SHAKEN ? Moments.line(7, 1.1) : Moments.round(0.02);
    return new FrameBlur(
        new FrameBlur.Optics(camera, WIDTH, HEIGHT, lens, new FrameBlur.Focus(disc, 1)),
        new FrameBlur.Motion(sky, sky, 15, shake),
        new StarBlur.Core(0.82, 0.9),
        StarBlur.Glow.NONE);
  }

  private boolean isPortrait() {
    return facts.orientation().swapsSides();
  }

  private boolean isSky(double x, double y) {
    double along = isPortrait() ? 1 - y / HEIGHT : x / WIDTH;
    double up = isPortrait() ? x / WIDTH : y / HEIGHT;
    return up < ThumbnailFixture.horizon(along);
  }

  private SkyMask mask() {
    List<String> rows = new ArrayList<>();
    for (int top = 0; top < HEIGHT; top += MESH) {
      StringBuilder row = new StringBuilder();
      for (int left = 0; left < WIDTH; left += MESH) {
        row.append(isSky(left + MESH / 2.0, top + MESH / 2.0) ? '1' : '0');
      }
      rows.add(row.toString());
    }
    return new SkyMask(MESH, rows);
  }

  private Moments trueMoments(double x, double y, double sharpness) {
    double radius = Math.hypot(x - WIDTH / 2.0, y - HEIGHT / 2.0) / Math.hypot(WIDTH, HEIGHT) * 2;
    double around = Math.atan2(y - HEIGHT / 2.0, x - WIDTH / 2.0);
    Moments core =
        Moments.round(0.82 * sharpness)
            .plus(Moments.ofAxes(0.5 * radius * radius, 0.15 * radius * radius, around));
    double pole = Math.atan2(y + 1800, x - 2200);
    Moments sky = Moments.line(4.2, pole + Math.PI / 2);
    return switch (kind) {
      case SHARP -> core.plus(Moments.line(1.0, pole + Math.PI / 2));
      case DEFOCUSED -> core.plus(Moments.round(2.6 * sharpness));
      case TRAILED -> core.plus(sky);
      case SHAKEN -> core.plus(Moments.line(7, 1.1));
      case SOFT_EDGES ->
          core.plus(Moments.ofAxes(5 * Math.pow(radius, 4), 1.2 * Math.pow(radius, 4), around));
      case HAZY -> core.plus(Moments.round(0.6));
      case UNDECIDED -> core.plus(Moments.line(4.8, 0.4));
    };
  }

  private Star star(double x, double y, int rank, double sharpness, Random random) {
    Moments moments = trueMoments(x, y, sharpness);
    moments =
        moments.plus(
            new Moments(
                0.05 * random.nextGaussian(),
                0.04 * random.nextGaussian(),
                0.05 * random.nextGaussian()));
    double snr = 20 + 3000.0 / (rank + 4);
    return new Star(
        x,
        y,
        40_000 * snr / 100,
        snr,
        moments,
        0.05,
        0.04,
        0.05,
        Moments.FWHM_PER_SIGMA * Math.sqrt(moments.majorPx2()),
        Moments.FWHM_PER_SIGMA * Math.sqrt(moments.minorPx2()),
        0,
        0,
        1.1,
        0.4);
  }

  private static double radius(Star star) {
    return Math.hypot(star.xPx() - WIDTH / 2.0, star.yPx() - HEIGHT / 2.0)
        / Math.hypot(WIDTH / 2.0, HEIGHT / 2.0);
  }

  private static double median(List<Star> stars, java.util.function.ToDoubleFunction<Star> value) {
    return RobustStats.median(stars.stream().mapToDouble(value).toArray());
  }

  private static Moments medianMoments(List<Star> stars) {
    return new Moments(
        median(stars, star -> star.moments().xxPx2()),
        median(stars, star -> star.moments().xyPx2()),
        median(stars, star -> star.moments().yyPx2()));
  }

  private FrameShape shapeOf(List<Star> stars) {
    Moments median = medianMoments(stars);
    double sumX = 0;
    double sumY = 0;
    for (Star star : stars) {
      double angle = 2 * star.moments().positionAngleRad();
      sumX += Math.cos(angle);
      sumY += Math.sin(angle);
    }
    List<Star> centre = stars.stream().filter(star -> radius(star) < 0.4).toList();
    List<Star> edge = stars.stream().filter(star -> radius(star) > 0.75).toList();
    double fwhmPx = median(stars, Star::fwhmPx);
    return new FrameShape(
        stars.size(),
        fwhmPx,
        facts.focalLengthMm().map(f -> fwhmPx * 206.265 * 5.98 / f.value()),
        median.rmsWidthPx(),
        median(stars, star -> star.fwhmMinorPx() / star.fwhmMajorPx()),
        median,
        Math.toDegrees(facts.orientation().display(median).positionAngleRad()),
        Math.hypot(sumX, sumY) / stars.size(),
        Optional.of(median(centre, Star::fwhmPx)),
        Optional.of(median(edge, Star::fwhmPx)),
        field.sky().levelFraction());
  }

  private List<AverageStar> averages(List<Star> stars) {
    return List.of(
        average(AverageStar.Zone.WHOLE, stars, star -> true),
        average(AverageStar.Zone.CENTRE, stars, star -> radius(star) < 0.4),
        average(AverageStar.Zone.MIDWAY, stars, star -> radius(star) >= 0.4 && radius(star) < 0.75),
        average(AverageStar.Zone.EDGE, stars, star -> radius(star) >= 0.75));
  }

  /** A Gaussian of the zone's median moments, or a soft-edged disc when out of focus. */
  private AverageStar average(AverageStar.Zone zone, List<Star> all, Predicate<Star> inZone) {
    List<Star> stars = all.stream().filter(inZone).toList();
    Moments moments = medianMoments(stars);
    double determinant = moments.xxPx2() * moments.yyPx2() - moments.xyPx2() * moments.xyPx2();
    int samples = 3;
    int side = 73;
    float[] values = new float[side * side];
    for (int i = 0; i < values.length; i++) {
      double x = (i % side - side / 2) / (double) samples;
      double y = (i / side - side / 2) / (double) samples;
      double distance =
          (moments.yyPx2() * x * x - 2 * moments.xyPx2() * x * y + moments.xxPx2() * y * y)
              / determinant;
      values[i] =
          (float)
              (kind == Kind.DEFOCUSED
                  ? 1 / (1 + Math.exp(3 * (distance - 2.6)))
                  : Math.exp(-distance / 2));
    }
    return new AverageStar(zone, stars.size(), samples, new Stamp(side, values));
  }

  Verdict verdict(Optional<Double> trailPx) {
    return switch (kind) {
      case SHARP ->
          decided(
              Cause.NONE, 0.82, seen(Evidence.Kind.AS_SHARP_AS_SHARPEST), round(), edgesSharp());
      case DEFOCUSED ->
          decided(Cause.FOCUS, 0.66, wider(1.9), round(), seen(Evidence.Kind.ONE_FRAME_ONLY));
      case TRAILED -> decided(Cause.TRAILING, 0.63, oneDirection(), trail(trailPx));
      case SHAKEN ->
          decided(
              Cause.TRIPOD,
              0.84,
              oneDirection(),
              seen(
                  Evidence.Kind.TRAIL_TOO_SHORT_TO_EXPLAIN,
                  Map.of("trailPredictedPx", 4.5, "trailLargestPx", 5.1)),
              wider(1.8));
      case SOFT_EDGES ->
          decided(
              Cause.LENS,
              0.71,
              seen(Evidence.Kind.EDGES_SOFTER, Map.of("edgeRatio", 1.64)),
              seen(Evidence.Kind.RADIAL_PATTERN));
      case HAZY -> decided(Cause.HAZE, 0.61, wider(1.3), round());
      case UNDECIDED -> undecided(trailPx);
    };
  }

  private Verdict undecided(Optional<Double> trailPx) {
    Map<Cause, Double> probabilities = probabilities(Cause.TRAILING, 0.45);
    probabilities.put(Cause.TRIPOD, 0.40);
    probabilities.put(Cause.NONE, 0.05);
    probabilities.put(Cause.FOCUS, 0.04);
    probabilities.put(Cause.LENS, 0.03);
    probabilities.put(Cause.HAZE, 0.03);
    return new Verdict(
        Optional.empty(),
        probabilities,
        List.of(Cause.TRAILING, Cause.TRIPOD),
        List.of(oneDirection(), trail(trailPx)));
  }

  private static Map<Cause, Double> probabilities(Cause likeliest, double probability) {
    Map<Cause, Double> probabilities = new EnumMap<>(Cause.class);
    for (Cause cause : Cause.values()) {
      probabilities.put(
          cause,
          cause == likeliest ? probability : (1 - probability) / (Cause.values().length - 1));
    }
    return probabilities;
  }

  private static Verdict decided(Cause cause, double probability, Evidence... evidence) {
    return new Verdict(
        Optional.of(cause), probabilities(cause, probability), List.of(), List.of(evidence));
  }

  private static Evidence seen(Evidence.Kind evidence) {
    return new Evidence(evidence, Map.of());
  }

  private static Evidence seen(Evidence.Kind evidence, Map<String, Double> values) {
    return new Evidence(evidence, values);
  }

  private static Evidence wider(double ratio) {
    return seen(Evidence.Kind.WIDER_THAN_SHARPEST, Map.of("widthRatio", ratio));
  }

  private Evidence round() {
    return seen(Evidence.Kind.STARS_ROUND, Map.of("roundness", shape.roundness()));
  }

  private static Evidence edgesSharp() {
    return seen(Evidence.Kind.EDGES_AS_SHARP, Map.of("edgeRatio", 1.08));
  }

  private Evidence oneDirection() {
    return seen(
        Evidence.Kind.ONE_DIRECTION_EVERYWHERE,
        Map.of(
            "roundness",
            shape.roundness(),
            "angleDeg",
            shape.elongationAngleDeg(),
            "coherence",
            shape.directionCoherence()));
  }

  private static Evidence trail(Optional<Double> trailPx) {
    return trailPx
        .map(
            trail ->
                seen(
                    Evidence.Kind.TRAIL_POSSIBLE,
                    Map.of("trailPredictedPx", trail, "trailLargestPx", 1.3 * trail)))
        .orElse(seen(Evidence.Kind.TRAIL_UNKNOWN));
  }
}
