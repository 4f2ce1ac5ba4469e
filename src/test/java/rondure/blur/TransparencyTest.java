package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import rondure.base.Moments;
import rondure.base.RobustStats;
import rondure.sky.SceneSky;
import rondure.sky.StarTracks;
import rondure.stars.SkyState;
import rondure.stars.Star;
import rondure.stars.StarField;
import rondure.testing.Fields;

/**
 * Loss of light from the same stars: Δm = -2.5 log10[(F2/(t2 g2)) / (F1/(t1 g1))], Pogson's scale.
 * Scenes of computed fluxes, and of simulated frames whose transparency is known.
 */
class TransparencyTest {
  private static final int WIDTH = 3000;
  private static final int HEIGHT = 2000;
  private static final double FOCAL_PX = 11_400;
  private static final double HALF_DIAGONAL = Math.hypot(WIDTH, HEIGHT) / 2;

  /** Stars on a band that drifts to the right; magnitudes and places by chance. */
  private record Band(int frames, double driftPx, int perFrame, double noiseMag) {

    /**
     * @param change of a star's magnitude by frame and place (x in half diagonals)
     */
    SceneEvidence scene(Change change, List<Optional<Double>> gains, SkyState... skies) {
      Random random = new Random(5);
      int stars = (int) (perFrame * (1 + frames * driftPx / WIDTH));
      List<List<Star>> seen = new ArrayList<>();
      List<List<Integer>> numbers = new ArrayList<>();
      IntStream.range(0, frames).forEach(i -> seen.add(new ArrayList<>()));
      IntStream.range(0, frames).forEach(i -> numbers.add(new ArrayList<>()));
      for (int s = 0; s < stars; s++) {
        double start = WIDTH - random.nextDouble() * (WIDTH + frames * driftPx);
        double y = random.nextDouble() * HEIGHT;
        double magnitude = -10 - 3 * random.nextDouble();
        for (int f = 0; f < frames; f++) {
          double x = start + f * driftPx;
          if (x >= 0 && x < WIDTH) {
            double noise = noiseMag * random.nextGaussian();
            double right = (x - WIDTH / 2.0) / HALF_DIAGONAL;
            double down = (y - HEIGHT / 2.0) / HALF_DIAGONAL;
            double gain = gains.get(f).orElse(1.0);
            double seenMag = magnitude + noise + change.at(f, right, down);
            seen.get(f).add(star(x, y, gain * Math.pow(10, -0.4 * seenMag)));
            numbers.get(f).add(s);
          }
        }
      }
      List<StarField> fields = new ArrayList<>();
      for (int f = 0; f < frames; f++) {
        SkyState sky = skies.length > 0 ? skies[f % skies.length] : sky(1000, 0);
        fields.add(Fields.field(WIDTH, HEIGHT, seen.get(f), List.of(), Map.of(), sky));
      }
      return evidence(fields, numbers, stars, gains);
    }
  }

  private interface Change {
    double at(int frame, double x, double y);
  }

  private static SkyState sky(double level, double clippedShare) {
    return new SkyState(level, 30, level / 16000, 1, clippedShare);
  }

  private static Star star(double x, double y, double flux) {
    Star shape = Fields.star(x, y, Moments.round(1), 0.03);
    return new Star(
        x, y, flux, 60, shape.moments(), 0.03, 0.03, 0.03, 2.355, 2.355, 0, 0, 1.08, 0.1);
  }

  private static SceneEvidence evidence(
      List<StarField> fields,
      List<List<Integer>> numbers,
      int stars,
      List<Optional<Double>> gains) {
    SceneReference reference =
        SceneReference.of(
            List.of(new SceneReference.Member(FieldShape.of(fields.get(0)), Optional.empty())));
    List<FrameEvidence> frames = new ArrayList<>();
    for (int f = 0; f < fields.size(); f++) {
      Optional<Double> none = Optional.empty();
      frames.add(
          new FrameEvidence(
              fields.get(f), none, Optional.of(FOCAL_PX), none, gains.get(f), false, reference));
    }
    List<int[]> byFrame =
        numbers.stream().map(n -> n.stream().mapToInt(Integer::intValue).toArray()).toList();
    SceneSky unknown =
        SceneSky.unknown(SceneSky.Finding.CLOCK_UNKNOWN, Optional.empty(), fields.size());
    SceneSky sky =
        new SceneSky(
            unknown.finding(),
            unknown.camera(),
            false,
            unknown.pole(),
            180,
            unknown.frames(),
            new StarTracks(stars, byFrame));
    return new SceneEvidence(frames, IntStream.range(0, fields.size()).boxed().toList(), sky);
  }

  private static List<Optional<Double>> gains(int frames, double gain) {
    return IntStream.range(0, frames).mapToObj(f -> Optional.of(gain)).toList();
  }

  private static double loss(List<FrameLight> lights, int frame) {
    return lights.get(frame).loss().orElseThrow().lossMag();
  }

  /** Pogson: flux ratios 0.5, 0.9 and 100 are 0.75257, 0.11439 and -5 mag. */
  @Test
  void fluxRatiosAreMagnitudes() {
    double[][] known = {{0.5, 0.75257}, {0.9, 0.11439}, {100, -5}};
    for (double[] one : known) {
      Change change = (frame, x, y) -> frame == 2 ? -2.5 * Math.log10(one[0]) : 0;
      SceneEvidence scene = new Band(6, 0, 80, 0).scene(change, gains(6, 13));
      List<FrameLight> lights = Transparency.of(scene);
      assertEquals(one[1], loss(lights, 2), 2e-5);
      assertEquals(0, loss(lights, 0), 2e-5);
      assertEquals(1 - one[0], lights.get(2).loss().orElseThrow().lostShare(), 2e-5);
    }
  }

  /** Four times the exposure brings four times the light: no star gained or lost any. */
  @Test
  void exposureIsNoGainOfLight() {
    List<Optional<Double>> gains =
        IntStream.range(0, 8).mapToObj(f -> Optional.of(f % 2 == 0 ? 3.0 : 12.0)).toList();
    List<FrameLight> lights =
        Transparency.of(new Band(8, 20, 80, 0.02).scene((f, x, y) -> 0, gains));
    for (int f = 0; f < 8; f++) {
      assertEquals(0, loss(lights, f), 0.02);
    }
  }

  /**
   * Each star crosses the frame in 15 of 60 frames, so none is in the first frame and in the last;
   * vignetting of 1.1 mag in the corners moves under it. A veil of 0.8 mag over four frames is
   * found to 0.05 mag, and nobody else is made hazy.
   */
  @Test
  void lossIsChainedOverStarsThatComeAndGo() {
    Change change = (f, x, y) -> 1.1 * (x * x + y * y) + (f >= 40 && f < 44 ? 0.8 : 0);
    List<FrameLight> lights =
        Transparency.of(new Band(60, 200, 60, 0.05).scene(change, gains(60, 13)));
    for (int f = 0; f < 60; f++) {
      double expected = f >= 40 && f < 44 ? 0.8 : 0;
      assertEquals(expected, loss(lights, f), 0.07, "frame " + f);
      assertTrue(lights.get(f).loss().orElseThrow().errorMag() < 0.4);
    }
  }

  /** Two frames clearer than all others by 0.6 mag do not make the others hazy. */
  @Test
  void aFewLuckyFramesAreNotTheMeasure() {
    Change change = (f, x, y) -> f == 3 || f == 9 ? -0.6 : 0;
    List<FrameLight> lights =
        Transparency.of(new Band(20, 20, 60, 0.03).scene(change, gains(20, 13)));
    assertEquals(0, loss(lights, 0), 0.03);
    assertEquals(-0.6, loss(lights, 3), 0.03);
  }

  /** Dew that takes 0.25 mag more in every frame: the first is the measure, of six and of three. */
  @Test
  void growingLossIsMeasuredFromTheClearestFrame() {
    for (int frames : new int[] {3, 6}) {
      List<FrameLight> lights =
          Transparency.of(
              new Band(frames, 0, 80, 0.02).scene((f, x, y) -> 0.25 * f, gains(frames, 13)));
      for (int f = 0; f < frames; f++) {
        assertEquals(0.25 * f, loss(lights, f), 0.06, frames + " frames, frame " + f);
      }
    }
  }

  /** Waves of cloud, 0.4 + 0.4 sin mag: scatter of 0.28 mag about the mean, in that frame alone. */
  @Test
  void patchesShowAsScatterAndAVeilDoesNot() {
    Change patchy = (f, x, y) -> f == 4 ? 0.4 + 0.4 * Math.sin(30 * y) : 0;
    List<FrameLight> lights =
        Transparency.of(new Band(8, 20, 100, 0.03).scene(patchy, gains(8, 13)));
    assertEquals(0.4, loss(lights, 4), 0.1);
    assertTrue(lights.get(4).loss().orElseThrow().scatterMag() > 0.2);
    assertTrue(lights.get(5).loss().orElseThrow().scatterMag() < 0.05);
  }

  /** Haze towards the horizon: 0.5 mag more for each half diagonal downwards, in one frame. */
  @Test
  void lossTowardsTheHorizonIsASlope() {
    Change change = (f, x, y) -> f == 4 ? 0.5 * y : 0;
    List<FrameLight> lights =
        Transparency.of(new Band(8, 20, 100, 0.03).scene(change, gains(8, 13)));
    assertEquals(0.5, lights.get(4).loss().orElseThrow().slopeYMag(), 0.05);
    assertEquals(0, lights.get(4).loss().orElseThrow().slopeXMag(), 0.05);
  }

  /**
   * Without exposures, equal skies mean equal exposures; where the sky differs nothing is known.
   */
  @Test
  void withoutExposuresOnlyEqualSkiesCompare() {
    List<Optional<Double>> unknown =
        IntStream.range(0, 8).mapToObj(f -> Optional.<Double>empty()).toList();
    Change change = (f, x, y) -> f % 4 == 3 ? -1.0 : f == 2 ? 0.6 : 0;
    List<FrameLight> lights =
        Transparency.of(
            new Band(8, 20, 80, 0.03)
                .scene(change, unknown, sky(1000, 0), sky(1010, 0), sky(990, 0), sky(2500, 0)));
    assertEquals(0.6, loss(lights, 2), 0.05);
    assertEquals(Optional.of(FrameLight.Silence.EXPOSURE_UNKNOWN), lights.get(3).silence());
  }

  @Test
  void aSkyClippedToBlackTellsNothing() {
    Change change = (f, x, y) -> f == 1 ? 0.8 : 0;
    List<FrameLight> lights =
        Transparency.of(
            new Band(6, 20, 80, 0.03).scene(change, gains(6, 13), sky(1000, 0), sky(0, 0.8)));
    assertEquals(Optional.of(FrameLight.Silence.BLACK_SKY), lights.get(1).silence());
    assertTrue(lights.get(1).wings().isEmpty());
    assertEquals(0, loss(lights, 2), 0.05);
  }

  /**
   * A knock in the middle of frame 6: the tracks before it end in one image (35 % of the light,
   * 1.14 mag), those after it begin in the other (0.47 mag). The frames after it have lost nothing.
   */
  @Test
  void aKnockedFrameIsNoBridge() {
    double[] imageMag = {-2.5 * Math.log10(0.35), -2.5 * Math.log10(0.65)};
    List<StarField> fields = new ArrayList<>();
    List<List<Integer>> numbers = new ArrayList<>();
    Random random = new Random(8);
    double[] x = random.doubles(160, 0, WIDTH).toArray();
    double[] y = random.doubles(160, 0, HEIGHT).toArray();
    double[] magnitude = random.doubles(160, -13, -10).toArray();
    for (int f = 0; f < 12; f++) {
      List<Star> stars = new ArrayList<>();
      List<Integer> own = new ArrayList<>();
      for (int s = 0; s < 160; s++) {
        boolean before = s < 80;
        if (f == 6 || before == f < 6) {
          double loss = f == 6 ? imageMag[before ? 0 : 1] : 0;
          stars.add(star(x[s], y[s], Math.pow(10, -0.4 * (magnitude[before ? s : s - 80] + loss))));
          own.add(s);
        }
      }
      fields.add(Fields.field(WIDTH, HEIGHT, stars, List.of(), Map.of(), sky(1000, 0)));
      numbers.add(own);
    }
    List<FrameLight> lights = Transparency.of(evidence(fields, numbers, 160, gains(12, 13)));
    for (int f = 0; f < 12; f++) {
      assertEquals(f == 6 ? imageMag[0] : 0, loss(lights, f), 0.05, "frame " + f);
    }
  }

  /** Re-aimed after frame 5: no star is shared, and each half has its own measure. */
  @Test
  void halvesOfAReAimedSceneCompareWithin() {
    SceneEvidence one = new Band(6, 0, 60, 0.02).scene((f, x, y) -> f == 3 ? 0.8 : 0, gains(6, 13));
    List<FrameEvidence> frames = new ArrayList<>(one.frames());
    frames.addAll(one.frames());
    List<int[]> byFrame = new ArrayList<>();
    for (int f = 0; f < 12; f++) {
      int shift = f < 6 ? 0 : 60;
      int count = frames.get(f).field().stars().size();
      byFrame.add(IntStream.range(shift, shift + count).toArray());
    }
    SceneSky sky =
        new SceneSky(
            SceneSky.Finding.CLOCK_UNKNOWN,
            Optional.empty(),
            false,
            Optional.empty(),
            180,
            SceneSky.unknown(SceneSky.Finding.NO_MATCH, Optional.empty(), 12).frames(),
            new StarTracks(120, byFrame));
    List<Integer> places = IntStream.range(0, 12).boxed().toList();
    List<FrameLight> lights = Transparency.of(new SceneEvidence(frames, places, sky));
    for (int f = 0; f < 12; f++) {
      assertEquals(f % 6 == 3 ? 0.8 : 0, loss(lights, f), 0.03, "frame " + f);
      assertEquals(6, lights.get(f).loss().orElseThrow().frames());
    }
  }

  @Test
  void framesWithoutSharedStarsAreSilent() {
    SceneEvidence scene = new Band(3, 5 * WIDTH, 60, 0.03).scene((f, x, y) -> 0, gains(3, 13));
    for (FrameLight light : Transparency.of(scene)) {
      assertEquals(Optional.of(FrameLight.Silence.FEW_STARS), light.silence());
    }
  }

  private static final String SHOTS =
      "[{\"count\": 7, \"exposureSeconds\": 13, \"intervalSeconds\": 75, \"iso\": 800}]";

  /**
   * Simulated frames: a patchy cloud in frames 5 and 6 is found to 0.25 mag of the median star's
   * (stars behind the thickest patches are gone), a gust of 3 px in frame 3 and defocus that grows
   * to a disc of 5 px in frame 7 lose no light to 0.06 mag.
   */
  @Test
  void cloudIsLossAndBlurIsNot() {
    SimScene scene =
        SimScene.of(
            "shots",
            SHOTS,
            "events",
            "[{\"kind\":\"cloud\",\"firstFrame\":5,\"lastFrame\":6,\"opacityMag\":0.8,"
                + "\"patchiness\":0.4,\"glow\":0.2},"
                + "{\"kind\":\"gust\",\"firstFrame\":3,\"lastFrame\":3,\"amplitudePx\":3,"
                + "\"acrossShare\":0.35,\"frequencyHz\":5.2,\"directionDeg\":24}]",
            "focusMicrons",
            "[{\"minutes\":0,\"value\":0},{\"minutes\":8,\"value\":130}]");
    List<FrameLight> lights = Transparency.of(scene.evidence(true));
    double[] truth =
        scene.truths().stream().mapToDouble(t -> -2.5 * Math.log10(t.transparency())).toArray();
    double clear = RobustStats.percentile(ClearFrames.REFERENCE, truth);
    for (int f = 0; f < truth.length; f++) {
      double tolerance = truth[f] > 0.1 ? 0.25 : 0.06;
      assertEquals(truth[f] - clear, loss(lights, f), tolerance, "frame " + (f + 1));
    }
    assertTrue(lights.get(4).loss().orElseThrow().lostShare() > FrameLight.HAZE_LOSS_SHARE);
  }

  /**
   * Growing dew (1 mag, and 40 % of what is left in a halo of 14 px): light is lost as it truly is,
   * the halo's included (it lies outside the stars), wings grow, the core stays.
   */
  @Test
  @Tag("thorough")
  void dewIsLossWithGrowingWings() {
    SimScene scene =
        SimScene.of(
            "shots",
            SHOTS.replace("7", "10"),
            "events",
            "[{\"kind\":\"dew\",\"firstFrame\":4,\"lastFrame\":10,\"opacityMag\":1.0,"
                + "\"haloShare\":0.4,\"haloFwhmPx\":14}]");
    List<FrameLight> lights = Transparency.of(scene.evidence(true));
    assertTrue(loss(lights, 9) - loss(lights, 0) > 1.2);
    assertTrue(loss(lights, 9) - loss(lights, 0) < 1.6);
    FrameLight.Wings last = lights.get(9).wings().orElseThrow();
    assertTrue(last.excess() > 0.07 && last.excess() > 2 * last.errorShare(), last.toString());
    assertTrue(Math.abs(lights.get(1).wings().orElseThrow().excess()) < 0.04);
  }
}
