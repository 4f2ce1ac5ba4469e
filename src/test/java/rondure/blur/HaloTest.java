package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rondure.base.Moments;
import rondure.base.Stamp;
import rondure.sim.NightPlan;
import rondure.stars.AverageStar;
import rondure.stars.Star;
import rondure.stars.StarField;
import rondure.stars.Surroundings;
import rondure.testing.SimNight;

/**
 * Halos of average stars drawn from closed forms, and of simulated frames: a halo that holds the
 * share s of the light with the variance σ² adds s σ² to the second moment (variances of a
 * mixture).
 */
class HaloTest {
  private static final int SIDE = 61;
  private static final int PER_PX = 4;
  private static final double FWHM = 2.5;

  /** Wings of a Gaussian core and nothing told of the ground but that it is nearly black. */
  private static final HaloGround BLACK = new HaloGround(0, 0.0015, 0.04, 10);

  private static Halo read(DoubleUnaryOperator profile, HaloGround ground) {
    return found(profile, ground).orElseThrow();
  }

  /** 0 where the light beyond the core does not fall off: that is no halo's. */
  private static double probability(Optional<Halo> found) {
    return found.map(halo -> halo.probability(0.1)).orElse(0.0);
  }

  private static Optional<Halo> found(DoubleUnaryOperator profile, HaloGround ground) {
    SplittableRandom random = new SplittableRandom(7);
    float[] values = new float[SIDE * SIDE];
    for (int i = 0; i < values.length; i++) {
      double radius = Math.hypot(i % SIDE - SIDE / 2, i / SIDE - SIDE / 2) / PER_PX;
      double noise = 0.002 * random.nextGaussian();
      values[i] = (float) (profile.applyAsDouble(radius) / profile.applyAsDouble(0) + noise);
    }
    AverageStar star = new AverageStar(AverageStar.Zone.WHOLE, 40, PER_PX, new Stamp(SIDE, values));
    return Halo.of(star, ground, Surroundings.NONE, round());
  }

  private static FieldShape round() {
    return new FieldShape(
        60,
        FWHM,
        1,
        Moments.round(FWHM * FWHM / 5.545),
        0.01,
        0,
        FWHM,
        Optional.empty(),
        Optional.empty());
  }

  private static double gaussian(double radius, double fwhm) {
    double variance = fwhm * fwhm / (8 * Math.log(2));
    return Math.exp(-radius * radius / (2 * variance)) / (2 * Math.PI * variance);
  }

  private static double moffat(double radius, double beta) {
    return HaloFit.core(radius * radius / (FWHM * FWHM), 1 / beta)
        / (FWHM * FWHM * HaloFit.lightOfCore(1 / beta, 1));
  }

  private static double haloed(double core, double radius, double share, double fwhm) {
    return (1 - share) * core + share * gaussian(radius, fwhm);
  }

  @Test
  void aHaloHasItsShareAndItsMoment() {
    for (double share : new double[] {0.12, 0.2, 0.35}) {
      for (double fwhm : new double[] {9, 12, 14}) {
        Halo halo = read(r -> haloed(gaussian(r, FWHM), r, share, fwhm), BLACK);
        String told = share + " of " + fwhm + " px: " + halo;
        // An eighth of the light may still be the wings of a lens.
        assertTrue(share < 0.2 || halo.probability(0.1) > 0.8, told);
        assertEquals(share, halo.share(), Math.max(0.05, 2 * halo.shareError()), told);
        double px2 = share * fwhm * fwhm / (8 * Math.log(2));
        assertEquals(px2, halo.px2(), Math.max(0.25 * px2, 2 * halo.px2Error()), told);
      }
    }
  }

  /** β of 2.6 to 6: what lenses have by themselves (Moffat 1969; range: common practice). */
  @Test
  void wingsOfALensAreNoHalo() {
    assertTrue(probability(found(r -> gaussian(r, FWHM), BLACK)) < 0.05);
    for (double beta : new double[] {2.6, 3, 3.5, 4.3, 6}) {
      Optional<Halo> halo = found(r -> moffat(r, beta), BLACK);
      assertTrue(probability(halo) < 0.12, beta + ": " + halo);
    }
  }

  @Test
  void aHaloShowsBesideWingsToo() {
    Halo halo = read(r -> haloed(moffat(r, 4), r, 0.3, 13), BLACK);
    assertTrue(halo.probability(0.1) > 0.9, halo.toString());
    assertEquals(0.3, halo.share(), 0.1);
  }

  private static final double NARROW = 1.6;

  /**
   * Light of the rings about stars 1.6 px wide over their flux, which is that of the core, each
   * known to a thousandth.
   */
  private static Surroundings around(DoubleUnaryOperator profile, double coreShare) {
    List<Surroundings.Ring> rings =
        IntStream.range(3, 23)
            .mapToObj(
                r ->
                    ring(
                        r,
                        (profile.applyAsDouble(r + 0.5) - profile.applyAsDouble(25)) / coreShare))
            .toList();
    return new Surroundings(40, rings);
  }

  private static Surroundings.Ring ring(int fromPx, double lightPerPx2) {
    double areaPx2 = Math.PI * (2 * fromPx + 1);
    return new Surroundings.Ring(fromPx, fromPx + 1, lightPerPx2, 0.001 / areaPx2);
  }

  private static Optional<Halo> narrow(DoubleUnaryOperator profile, Surroundings around) {
    int side = 41;
    float[] values = new float[side * side];
    for (int i = 0; i < values.length; i++) {
      double radius = Math.hypot(i % side - side / 2, i / side - side / 2) / PER_PX;
      values[i] = (float) (profile.applyAsDouble(radius) / profile.applyAsDouble(0));
    }
    AverageStar star = new AverageStar(AverageStar.Zone.WHOLE, 40, PER_PX, new Stamp(side, values));
    FieldShape shape =
        new FieldShape(
            60,
            NARROW,
            1,
            Moments.round(NARROW * NARROW / 5.545),
            0.01,
            0,
            NARROW,
            Optional.empty(),
            Optional.empty());
    HaloGround crowded = new HaloGround(0.01, 0.006, 0.04, 10);
    return Halo.of(star, crowded, around, shape);
  }

  /**
   * About sharp stars among many a wide halo is flat within the average star: only beyond it is it
   * told.
   */
  @Test
  void ringsFarOutShowWhatTheAverageStarCannot() {
    DoubleUnaryOperator dewy = r -> haloed(gaussian(r, NARROW), r, 0.3, 14);
    DoubleUnaryOperator sharp = r -> gaussian(r, NARROW);
    double unseen = probability(narrow(dewy, Surroundings.NONE));
    assertTrue(unseen < 0.7, "by the average star alone: " + unseen);
    Halo seen = narrow(dewy, around(dewy, 0.7)).orElseThrow();
    assertTrue(seen.dewProbability(0.1) > 0.95, seen.toString());
    assertEquals(0.3, seen.share(), 0.06, seen.toString());
    assertEquals(14, seen.fwhmPx(), 3, seen.toString());
    assertTrue(probability(narrow(sharp, around(sharp, 1))) < 0.05);
    DoubleUnaryOperator wings =
        r -> HaloFit.core(r * r / (NARROW * NARROW), 1 / 3.0) / (NARROW * NARROW * 1.5108399);
    assertTrue(probability(narrow(wings, around(wings, 1))) < 0.2);
  }

  /** Faint stars below the limit raise the ground between the stars, as told by the wing ratios. */
  @Test
  void groundBetweenTheStarsIsNoHalo() {
    HaloGround ground = new HaloGround(0.01, 0.004, 0.04, 10);
    Optional<Halo> halo = found(r -> gaussian(r, FWHM) + 0.012 * gaussian(0, FWHM), ground);
    assertTrue(probability(halo) < 0.12, halo.toString());
  }

  /** Light of Moffat profiles of half-maximum width 1: scipy.integrate.quad, 2026-11-25. */
  @Test
  void moffatLightIsThatOfItsIntegral() {
    assertEquals(1.5108399, HaloFit.lightOfCore(1 / 3.0, 1), 1e-4);
    assertEquals(0.7596334, HaloFit.inside(1, 1 / 3.0), 1e-4);
    assertEquals(1.3358035, HaloFit.lightOfCore(1 / 4.7, 1), 1e-4);
    assertEquals(0.9973539, HaloFit.inside(2.5, 1 / 4.7), 1e-4);
    assertEquals(0.5, HaloFit.inside(0.5, 0), 1e-9); // half of a Gaussian lies within its HWHM
  }

  /** Every star has wings of 0.12; neighbours of some share of its own light stand beside all. */
  @Test
  void wingsAreToldFromNeighboursByWhatStarsHaveAlike() {
    SplittableRandom random = new SplittableRandom(3);
    OwnWings alone = OwnWings.of(stars(random, 0), 30);
    assertEquals(0.12, alone.wings(), 0.02, alone.toString());
    assertTrue(alone.neighbours() < 0.03, alone.toString());
    OwnWings crowded = OwnWings.of(stars(random, 0.3), 30);
    assertEquals(0.12, crowded.wings(), 0.04, crowded.toString());
    assertEquals(0.3, crowded.neighbours(), 0.15, crowded.toString());
  }

  private static List<Star> stars(SplittableRandom random, double neighbours) {
    return IntStream.range(0, 90)
        .mapToDouble(i -> 8000 * Math.exp(2 - i / 30.0))
        .mapToObj(
            flux -> {
              double beside = -neighbours * Math.log(1 - random.nextDouble());
              return star(flux, 1.12 + beside + 30 / flux * random.nextGaussian());
            })
        .toList();
  }

  /** scipy.stats.exponnorm.pdf(x, mean/σ, 0, σ) of scipy 1.10.1, 2026-11-25. */
  @Test
  void neighboursAndNoiseTogetherFollowTheirLaw() {
    assertEquals(3.00358, OwnWings.density(0.1, 0.05, 0.2), 0.0003);
    assertEquals(0.699816, OwnWings.density(-0.05, 0.05, 0.2), 7.1e-05);
    assertEquals(2.57736, OwnWings.density(0.02, 0.02, 0.3), 0.00026);
    assertEquals(0.564161, OwnWings.density(0.3, 0.05, 0.1), 5.7e-05);
  }

  private static Star star(double flux, double wingRatio) {
    Moments moments = Moments.round(1);
    return new Star(0, 0, flux, 50, moments, 0.1, 0.1, 0.1, FWHM, FWHM, 0, 0, wingRatio, 0.1);
  }

  /** Through pixels, noise and star finding: dew on the lens of the sample night, and none. */
  @Test
  void dewIsSeenInOneSimulatedFrame() {
    String dew =
        "[{\"kind\":\"dew\",\"firstFrame\":1,\"lastFrame\":1,\"opacityMag\":0.3,"
            + "\"haloShare\":0.3,\"haloFwhmPx\":12}]";
    Halo halo = ofFrame(SimNight.plan("events", dew)).orElseThrow();
    double truth = 0.3 * 144 / (8 * Math.log(2));
    assertTrue(halo.probability(0.1) > LightMissing.SAID_FROM, halo.toString());
    assertEquals(0.3, halo.share(), 0.12, halo.toString());
    assertEquals(truth, halo.px2(), Math.max(0.5 * truth, 2 * halo.px2Error()), halo.toString());
    assertTrue(probability(ofFrame(SimNight.plan())) < 0.2);
  }

  /** A disc of defocus ends sooner than any core: what its wings lack is not told by a halo. */
  @Test
  void aWideDiscIsNoHalo() {
    HaloGround lacking = new HaloGround(0.028, 0.014, -0.23, 0.06);
    DoubleUnaryOperator disc = r -> 1 / (1 + Math.exp(6 * (2 * r / FWHM - 1)));
    assertTrue(found(disc, lacking).isEmpty());
  }

  private static Optional<Halo> ofFrame(NightPlan plan) {
    StarField field = SimNight.measure(plan, 1);
    return Halo.of(field, FieldShape.of(field));
  }
}
