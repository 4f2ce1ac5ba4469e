package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.BiFunction;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import rondure.base.Moments;
import rondure.base.RobustStats;
import rondure.base.Stamp;
import rondure.sky.Aim;
import rondure.sky.Camera;
import rondure.sky.Direction;
import rondure.sky.ImageVelocity;
import rondure.sky.SkyMotion;
import rondure.stars.AverageStar;
import rondure.stars.Star;
import rondure.stars.StarField;
import rondure.testing.Fields;

/**
 * Tensors are computed from physics: line L²/12, disc D²/16, trail from the gnomonic flow, lens
 * terms growing as r²; noise as a star of SNR about 50 has it (second-moment error 2.83 σ²/ν).
 */
class OneFrameAttributionTest {
  private static final int WIDTH = 6000;
  private static final int HEIGHT = 4000;
  private static final double WIDE = 24_000 / 4.3;
  private static final double CORE_PX2 = 0.9;
  private static final double NOISE = 0.06;

  private final OneFrameAttribution attribution =
      new OneFrameAttribution(AttributionSettings.defaults());

  private static StarField field(int count, BiFunction<Double, Double, Moments> blur) {
    Random random = new Random(11);
    List<Star> stars = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double x = random.nextDouble() * WIDTH;
      double y = random.nextDouble() * HEIGHT;
      Moments clean = Moments.round(CORE_PX2).plus(blur.apply(x, y));
      stars.add(Fields.star(x, y, noisy(clean, random), NOISE * clean.meanPx2()));
    }
    return Fields.field(WIDTH, HEIGHT, stars, List.of());
  }

  /**
   * L (I + G) Lᵀ with clean = L Lᵀ and G symmetric noise: the scatter of second moments of a normal
   * sample (Wishart), in proportion to the shape itself, so that a thin trail's width stays
   * positive.
   */
  private static Moments noisy(Moments clean, Random random) {
    double a = Math.sqrt(clean.xxPx2());
    double b = clean.xyPx2() / a;
    double c = Math.sqrt(clean.yyPx2() - b * b);
    double along = 1 + NOISE * random.nextGaussian();
    double mixed = NOISE / Math.sqrt(2) * random.nextGaussian();
    double across = 1 + NOISE * random.nextGaussian();
    return new Moments(
        a * a * along,
        a * (b * along + c * mixed),
        b * b * along + 2 * b * c * mixed + c * c * across);
  }

  private static StarField sharp() {
    return field(150, (x, y) -> Moments.round(0));
  }

  private static BiFunction<Double, Double, Moments> trail(
      double focalPx, Direction pole, double seconds) {
    Camera camera = Camera.rectilinear(focalPx, WIDTH, HEIGHT);
    return (x, y) -> {
      ImageVelocity velocity = SkyMotion.velocity(camera, pole, x, y);
      return Moments.line(velocity.speedPxPerS() * seconds, velocity.directionRad());
    };
  }

  private static SceneReference scene(StarField... fields) {
    List<SceneReference.Member> members = new ArrayList<>();
    for (StarField field : fields) {
      members.add(new SceneReference.Member(FieldShape.of(field), Optional.of(20.0)));
    }
    return SceneReference.of(members);
  }

  private static FrameEvidence evidence(StarField field, double focalPx, SceneReference scene) {
    return new FrameEvidence(
        field,
        Optional.of(20.0),
        Optional.of(focalPx),
        Optional.empty(),
        Optional.empty(),
        false,
        scene);
  }

  private static FrameEvidence withoutFacts(StarField field, SceneReference scene) {
    return new FrameEvidence(
        field, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), true, scene);
  }

  private static void assertCause(Cause cause, Verdict verdict) {
    assertEquals(Optional.of(cause), verdict.cause(), verdict.toString());
  }

  private static boolean saw(Verdict verdict, Evidence.Kind kind) {
    return verdict.evidence().stream().anyMatch(evidence -> evidence.kind() == kind);
  }

  @Test
  void asSharpAsTheSharpestIsNone() {
    StarField frame = sharp();
    Verdict verdict = attribution.judge(evidence(frame, WIDE, scene(frame, sharp(), sharp())));
    assertCause(Cause.NONE, verdict);
    assertTrue(saw(verdict, Evidence.Kind.AS_SHARP_AS_SHARPEST));
  }

  @Test
  void roundAndWideIsFocus() {
    StarField disc = field(150, (x, y) -> Moments.round(6.0 * 6.0 / 16));
    Verdict verdict = attribution.judge(evidence(disc, WIDE, scene(disc, sharp(), sharp())));
    assertCause(Cause.FOCUS, verdict);
    assertTrue(saw(verdict, Evidence.Kind.WIDER_THAN_SHARPEST));
    assertTrue(saw(verdict, Evidence.Kind.STARS_ROUND));
  }

  @Test
  void aSmearLongerThanAnyTrailIsTheTripod() {
    StarField shaken = field(150, (x, y) -> Moments.line(16, 0.6));
    Verdict verdict = attribution.judge(evidence(shaken, WIDE, scene(shaken, sharp(), sharp())));
    assertCause(Cause.TRIPOD, verdict);
    assertTrue(saw(verdict, Evidence.Kind.TRAIL_TOO_SHORT_TO_EXPLAIN));
  }

  /** At 135 mm directions tell nothing; the size does, for the sky turns over every tripod. */
  private Verdict onALongLens(double ofLargestTrail) {
    double focalPx = 135_000 / 4.3;
    Direction equator = new Aim(45, 180, 45).northPole();
    StarField smeared = field(150, trail(focalPx, equator, 4 * ofLargestTrail));
    FrameEvidence evidence =
        new FrameEvidence(
            smeared,
            Optional.of(4.0),
            Optional.of(focalPx),
            Optional.empty(),
            Optional.empty(),
            false,
            scene(smeared));
    return attribution.judge(evidence);
  }

  @Test
  void onALongLensASmearOfTheLargestTrailIsLikelyTheSkysThoughNeverSurely() {
    Verdict verdict = onALongLens(1);
    assertCause(Cause.TRAILING, verdict);
    double tripod = verdict.probabilities().get(Cause.TRIPOD);
    assertTrue(tripod > 0.03 && tripod < 0.25, "tripod " + tripod);
    assertTrue(saw(verdict, Evidence.Kind.TRAIL_POSSIBLE));
    assertTrue(saw(verdict, Evidence.Kind.ONE_FRAME_ONLY));
  }

  @Test
  void onALongLensAShortSmearIsTheTripodsMoreOftenThanOneOfTheLargestTrail() {
    double longest = onALongLens(1).probabilities().get(Cause.TRIPOD);
    double shorter = onALongLens(0.6).probabilities().get(Cause.TRIPOD);
    assertTrue(shorter > 1.5 * longest, shorter + " beside " + longest);
    assertCause(Cause.TRIPOD, onALongLens(1.5));
  }

  @Test
  void directionsTurningAboutAPoleOnAWideLensAreTheSky() {
    double focalPx = 14_000 / 4.3;
    Direction pole = new Aim(45, 20, 30).northPole();
    StarField trailed = field(150, trail(focalPx, pole, 32));
    FrameEvidence evidence =
        new FrameEvidence(
            trailed,
            Optional.of(32.0),
            Optional.of(focalPx),
            Optional.empty(),
            Optional.empty(),
            false,
            scene(trailed));
    Verdict verdict = attribution.judge(evidence);
    assertCause(Cause.TRAILING, verdict);
    assertTrue(saw(verdict, Evidence.Kind.PATTERN_OF_THE_SKY));
  }

  /** Nominal 30 s is truly 32 s (the nearest 2^(n/3), common practice of camera makers). */
  @Test
  void nominalExposuresAreTriedAtTheirTrueLength() {
    double focalPx = 14_000 / 4.3;
    Direction pole = new Aim(45, 60, 30).northPole();
    StarField trailed = field(150, trail(focalPx, pole, 32));
    FrameEvidence evidence =
        new FrameEvidence(
            trailed,
            Optional.of(30.0),
            Optional.of(focalPx),
            Optional.empty(),
            Optional.empty(),
            false,
            scene(trailed));
    assertCause(Cause.TRAILING, attribution.judge(evidence));
  }

  @Test
  void onAWideLensTheSameDirectionEverywhereIsNotTheSky() {
    double focalPx = 14_000 / 4.3;
    StarField shaken = field(150, (x, y) -> Moments.line(5, 0.8));
    FrameEvidence evidence =
        new FrameEvidence(
            shaken,
            Optional.of(32.0),
            Optional.of(focalPx),
            Optional.empty(),
            Optional.empty(),
            false,
            scene(shaken, sharp(), sharp()));
    Verdict verdict = attribution.judge(evidence);
    double trailing = verdict.probabilities().get(Cause.TRAILING);
    double tripod = verdict.probabilities().get(Cause.TRIPOD);
    assertTrue(tripod > trailing, verdict.toString());
  }

  @Test
  void withoutFactsASmearStaysUndecided() {
    StarField smeared = field(100, (x, y) -> Moments.line(5, 0.2));
    Verdict verdict = attribution.judge(withoutFacts(smeared, scene(smeared)));
    assertEquals(Optional.empty(), verdict.cause(), verdict.toString());
    assertTrue(saw(verdict, Evidence.Kind.TRAIL_UNKNOWN));
    assertTrue(verdict.probabilities().get(Cause.TRIPOD) > 0.3);
    assertTrue(verdict.probabilities().get(Cause.TRAILING) > 0.3);
  }

  @Test
  void softOnlyAtTheEdgesIsTheLens() {
    double half = Math.hypot(WIDTH, HEIGHT) / 2;
    StarField lens =
        field(
            250,
            (x, y) -> {
              double dx = x - WIDTH / 2.0;
              double dy = y - HEIGHT / 2.0;
              double share = Math.pow(Math.hypot(dx, dy) / half, 2);
              return Moments.ofAxes(9 * share * share, 3 * share * share, Math.atan2(dy, dx));
            });
    Verdict verdict = attribution.judge(evidence(lens, WIDE, scene(lens, lens, lens)));
    assertCause(Cause.LENS, verdict);
    assertTrue(saw(verdict, Evidence.Kind.EDGES_SOFTER));
    assertTrue(saw(verdict, Evidence.Kind.RADIAL_PATTERN));
  }

  @Test
  void aFrameStretchedMoreThanTheOthersIsTheTripodEvenIfTheSkyCould() {
    double focalPx = 24_000 / 4.3;
    Direction pole = new Aim(45, 180, 45).northPole();
    StarField calm = field(150, trail(focalPx, pole, 6));
    StarField shaken = field(150, (x, y) -> Moments.line(7, 0.4));
    StarField[] all = {calm, calm, calm, calm, calm, shaken};
    Verdict verdict = attribution.judge(evidence(shaken, focalPx, scene(all)));
    assertCause(Cause.TRIPOD, verdict);
    assertTrue(saw(verdict, Evidence.Kind.STRETCHED_MORE_THAN_OTHERS));
  }

  @Test
  void framesAllTrailedAlikeAreTheSkyThoughNoneIsSharper() {
    double focalPx = 50_000 / 4.3;
    StarField trailed = field(150, trail(focalPx, new Aim(45, 180, 30).northPole(), 8));
    FrameEvidence evidence =
        new FrameEvidence(
            trailed,
            Optional.of(8.0),
            Optional.of(focalPx),
            Optional.empty(),
            Optional.empty(),
            false,
            sceneOf(8, trailed, 7));
    Verdict verdict = attribution.judge(evidence);
    assertCause(Cause.TRAILING, verdict);
    assertTrue(saw(verdict, Evidence.Kind.STRETCHED_LIKE_OTHERS));
  }

  private static SceneReference sceneOf(double seconds, StarField field, int frames) {
    List<SceneReference.Member> members = new ArrayList<>();
    for (int i = 0; i < frames; i++) {
      members.add(new SceneReference.Member(FieldShape.of(field), Optional.of(seconds)));
    }
    return SceneReference.of(members);
  }

  @Test
  void aSceneSoftThroughoutIsNotCalledSharp() {
    StarField soft = field(150, (x, y) -> Moments.round(2.5));
    Verdict verdict = attribution.judge(evidence(soft, WIDE, scene(soft, soft, soft, soft)));
    assertCause(Cause.FOCUS, verdict);
    assertTrue(saw(verdict, Evidence.Kind.SOFT_THROUGHOUT));
    StarField between = field(150, (x, y) -> Moments.round(0.8));
    Verdict doubtful = attribution.judge(evidence(between, WIDE, scene(between, between)));
    assertEquals(Optional.empty(), doubtful.cause(), doubtful.toString());
    assertEquals(2, doubtful.undecidedBetween().size());
  }

  @Test
  void aSharpLoneFrameIsNone() {
    StarField frame = sharp();
    assertCause(Cause.NONE, attribution.judge(evidence(frame, WIDE, scene(frame))));
  }

  @Test
  void roundStarsUnderALongPredictedTrailWereFollowed() {
    StarField tracked = sharp();
    FrameEvidence evidence =
        new FrameEvidence(
            tracked,
            Optional.of(120.0),
            Optional.of(85_000 / 4.0),
            Optional.empty(),
            Optional.empty(),
            false,
            scene(tracked));
    Verdict verdict = attribution.judge(evidence);
    assertCause(Cause.NONE, verdict);
    assertTrue(saw(verdict, Evidence.Kind.TRAIL_ABSENT));
  }

  @Test
  void noisyRoundStarsAreNotCalledSmeared() {
    Random random = new Random(5);
    List<Star> stars = new ArrayList<>();
    for (int i = 0; i < 30; i++) {
      Moments noisy =
          new Moments(
              1 + 0.25 * random.nextGaussian(),
              0.18 * random.nextGaussian(),
              1 + 0.25 * random.nextGaussian());
      stars.add(
          Fields.star(random.nextDouble() * WIDTH, random.nextDouble() * HEIGHT, noisy, 0.25));
    }
    StarField field = Fields.field(WIDTH, HEIGHT, stars, List.of());
    Verdict verdict = attribution.judge(evidence(field, 4000, scene(field)));
    assertCause(Cause.NONE, verdict);
  }

  @Test
  void noiseDoesNotMakeRoundStarsOval() {
    Random random = new Random(8);
    List<Star> round = new ArrayList<>();
    List<Star> oval = new ArrayList<>();
    for (int i = 0; i < 120; i++) {
      double x = random.nextDouble() * WIDTH;
      double y = random.nextDouble() * HEIGHT;
      Moments noise =
          new Moments(
              0.2 * random.nextGaussian(),
              0.14 * random.nextGaussian(),
              0.2 * random.nextGaussian());
      round.add(Fields.star(x, y, Moments.round(1).plus(noise), 0.2));
      oval.add(Fields.star(x, y, Moments.ofAxes(1.5, 0.54, 0.4).plus(noise.times(0.5)), 0.1));
    }
    double plain = 0.87;
    assertTrue(FieldShape.of(Fields.field(WIDTH, HEIGHT, round, List.of())).roundness() > 0.93);
    assertTrue(
        round.stream().mapToDouble(s -> s.fwhmMinorPx() / s.fwhmMajorPx()).sum() / 120 < plain);
    assertEquals(
        0.6, FieldShape.of(Fields.field(WIDTH, HEIGHT, oval, List.of())).roundness(), 0.03);
  }

  @Test
  void trailsThatTurnAboutAPoleInTheFrameKeepTheirRoundness() {
    StarField field = field(300, trail(14_000 / 4.3, new Direction(0, 0, 1), 60));
    double median =
        RobustStats.median(
            field.stars().stream().mapToDouble(s -> s.fwhmMinorPx() / s.fwhmMajorPx()).toArray());
    assertEquals(median, FieldShape.of(field).roundness(), 0.04);
  }

  /** A picture made smaller hides a trail's width, L²/12, behind its pixels, but not its shape. */
  @Test
  void ovalStarsAreNeverNoneHoweverNarrow() {
    StarField small =
        field(150, (x, y) -> Moments.round(0.25 - CORE_PX2).plus(Moments.line(2.2, 0.4)));
    Verdict verdict = attribution.judge(withoutFacts(small, scene(small)));
    assertEquals(Optional.empty(), verdict.cause(), verdict.toString());
    assertEquals(List.of(Cause.TRAILING, Cause.TRIPOD), verdict.undecidedBetween());
    assertTrue(saw(verdict, Evidence.Kind.STARS_OVAL));
  }

  /**
   * Stretch away from a point off the middle, as in a cut picture: no turn of the sky does that.
   */
  @Test
  void narrowStarsDrawnAwayFromOnePlaceAreTheLens() {
    double half = Math.hypot(WIDTH, HEIGHT) / 2;
    StarField lens =
        field(
            250,
            (x, y) -> {
              double dx = x - 0.62 * WIDTH;
              double dy = y - 0.6 * HEIGHT;
              double stretch = 0.7 * Math.pow(Math.hypot(dx, dy) / half, 2);
              Moments core = Moments.round(0.16 - CORE_PX2);
              return core.plus(Moments.ofAxes(2 * stretch, 0, Math.atan2(dy, dx)));
            });
    Verdict verdict = attribution.judge(evidence(lens, 2000, scene(lens)));
    assertCause(Cause.LENS, verdict);
    assertTrue(saw(verdict, Evidence.Kind.STARS_OVAL), verdict.toString());
    assertTrue(saw(verdict, Evidence.Kind.RADIAL_PATTERN), verdict.toString());
  }

  /** Single tiny stars scatter to b/a 0.6; six of them do not make a frame oval. */
  @Test
  void aFewTinyStarsAreNotOval() {
    Random random = new Random(3);
    for (int frame = 0; frame < 20; frame++) {
      List<Star> stars = new ArrayList<>();
      for (int i = 0; i < 6; i++) {
        Moments noise =
            new Moments(
                0.06 * random.nextGaussian(),
                0.04 * random.nextGaussian(),
                0.06 * random.nextGaussian());
        stars.add(
            Fields.star(
                random.nextDouble() * WIDTH,
                random.nextDouble() * HEIGHT,
                Moments.round(0.2).plus(noise),
                0.06));
      }
      StarField field = Fields.field(WIDTH, HEIGHT, stars, List.of());
      Verdict verdict = attribution.judge(withoutFacts(field, scene(field)));
      assertFalse(saw(verdict, Evidence.Kind.STARS_OVAL), verdict.toString());
    }
  }

  @Test
  void starsAtThePixelsLimitAreNotCalledSoft() {
    StarField finest = field(60, (x, y) -> Moments.round(0.2 - CORE_PX2));
    StarField wider = field(60, (x, y) -> Moments.round(0.4 - CORE_PX2));
    Verdict verdict = attribution.judge(evidence(wider, WIDE, scene(finest, finest, wider)));
    assertCause(Cause.NONE, verdict);
  }

  /** A Gaussian has 2^-0.49 = 0.712 of its peak at 0.7 of its half-maximum radius; a disc all. */
  @Test
  void doughnutsHaveFlatTopsAndGaussiansDoNot() {
    double gauss = FlatTop.of(average(r -> Math.exp(-r * r / (2 * 3.0 * 3.0)))).orElseThrow();
    assertEquals(Math.pow(2, -0.49), gauss, 0.01);
    double ring = FlatTop.of(average(r -> r > 1.5 && r < 4 ? 1 : 0.05)).orElseThrow();
    assertTrue(ring > 0.9, "flatness " + ring);
  }

  private static AverageStar average(java.util.function.DoubleUnaryOperator profile) {
    int side = 61;
    float[] values = new float[side * side];
    for (int i = 0; i < values.length; i++) {
      double radius = Math.hypot(i % side - 30, i / side - 30) / 3.0;
      values[i] = (float) profile.applyAsDouble(radius);
    }
    return new AverageStar(AverageStar.Zone.WHOLE, 50, 3, new Stamp(side, values));
  }

  /** Airy FWHM 1.02899 λN: 1.585 µm at 550 nm and f/2.8, 0.264 px of 6 µm (any optics textbook). */
  @Test
  void diffractionIsSmallAgainstAPixel() {
    assertEquals(1.585, BestCase.airyFwhmPx(2.8, 1), 0.001);
    assertEquals(0.264, BestCase.airyFwhmPx(2.8, 6), 0.001);
    assertEquals(0.792, BestCase.airyFwhmPx(1.4, 1), 0.001);
    assertEquals(3.169, BestCase.airyFwhmPx(5.6, 1), 0.001);
  }

  @Property(tries = 60)
  void probabilitiesAlwaysCoverAllCausesAndSumToOne(
      @ForAll @DoubleRange(min = 0, max = 30) double line,
      @ForAll @DoubleRange(min = 0, max = 3) double angle,
      @ForAll @DoubleRange(min = 0, max = 20) double disc,
      @ForAll @DoubleRange(min = 300, max = 50_000) double focalPx) {
    StarField field =
        field(40, (x, y) -> Moments.line(line, angle).plus(Moments.round(disc * disc / 16)));
    Verdict verdict = attribution.judge(evidence(field, focalPx, scene(field, sharp())));
    assertEquals(1, verdict.probabilities().values().stream().mapToDouble(p -> p).sum(), 1e-9);
    assertTrue(verdict.probabilities().values().stream().allMatch(p -> p > 0));
  }
}
