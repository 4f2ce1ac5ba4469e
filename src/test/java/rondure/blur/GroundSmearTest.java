package rondure.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import rondure.base.Moments;
import rondure.stars.SkyMask;
import rondure.stars.SkyState;
import rondure.stars.Star;
import rondure.stars.StarField;
import rondure.testing.Fields;

/**
 * The camera's motion smears lamps as it smears stars, the sky's does not: rotation of the camera
 * acts on all directions alike, stars or not.
 */
class GroundSmearTest {
  private static final int WIDTH = 1280;
  private static final int HEIGHT = 1280;
  private static final Moments CORE = Moments.round(0.9);
  private static final Moments SMEAR = Moments.line(5, 0.4);

  /** Stars in the upper two thirds, lamps in the lowest fifth. */
  private static StarField field(Moments ofStars, Moments ofLamps, int lampCount) {
    Random random = new Random(3);
    List<Star> stars = new ArrayList<>();
    List<Star> lamps = new ArrayList<>();
    for (int i = 0; i < 120 + lampCount; i++) {
      boolean lamp = i >= 120;
      double x = random.nextDouble() * WIDTH;
      double y = lamp ? HEIGHT - 30 - 150 * random.nextDouble() : 800 * random.nextDouble();
      Moments own = CORE.plus(lamp ? ofLamps : ofStars);
      Moments noisy =
          new Moments(
              own.xxPx2() + 0.05 * random.nextGaussian(),
              own.xyPx2() + 0.05 * random.nextGaussian(),
              own.yyPx2() + 0.05 * random.nextGaussian());
      (lamp ? lamps : stars).add(Fields.star(x, y, noisy, 0.05));
    }
    List<String> rows = new ArrayList<>();
    for (int row = 0; row < 20; row++) {
      rows.add((row < 13 ? "1" : "0").repeat(20));
    }
    SkyState sky = new SkyState(1000, 30, 0.05, 0.65, 0);
    SkyMask mask = new SkyMask(64, rows);
    return new StarField(WIDTH, HEIGHT, stars, List.of(), Map.of(), sky, mask, List.of(), lamps);
  }

  private static Verdict alone(StarField field) {
    SceneReference scene =
        SceneReference.of(
            List.of(new SceneReference.Member(FieldShape.of(field), Optional.of(4.0))));
    // 135 mm, 6 µm, 4 s: an equatorial trail of 6.6 px; too long a lens for directions to decide
    FrameEvidence frame =
        new FrameEvidence(
            field,
            Optional.of(4.0),
            Optional.of(22_500.0),
            Optional.empty(),
            Optional.empty(),
            false,
            scene);
    return new OneFrameAttribution(AttributionSettings.defaults()).judge(frame);
  }

  @Test
  void sharpLampsUnderTrailedStarsProveTheSky() {
    GroundSmear ground = GroundSmear.of(field(SMEAR, Moments.round(0), 6), false).orElseThrow();
    assertTrue(ground.skyLogOdds() > 2, ground.toString());
    assertEquals(25 / 24.0, ground.starsPx2(), 0.06);
    assertEquals(0, ground.lightsPx2(), 0.08);
  }

  @Test
  void lampsSmearedLikeTheStarsProveTheTripod() {
    StarField field = field(SMEAR, SMEAR, 6);
    assertTrue(GroundSmear.of(field, true).orElseThrow().skyLogOdds() < -2);
    assertEquals(-1.5, GroundSmear.of(field, false).orElseThrow().skyLogOdds(), 1e-9);
  }

  /**
   * "Lamps" as many as stars are a part of the sky that was taken for ground: no proof of shake.
   */
  @Test
  void lampsAsDenseAsStarsMayBeStars() {
    assertEquals(0, GroundSmear.of(field(SMEAR, SMEAR, 36), false).orElseThrow().skyLogOdds());
  }

  @Test
  void roundStarsAskNothingOfLamps() {
    Moments none = Moments.round(0);
    assertTrue(GroundSmear.of(field(none, none, 6), false).isEmpty());
  }

  /** What nothing else in a lone frame with a long lens can tell. */
  @Test
  void lampsDecideALoneFrameWithALongLens() {
    Moments none = Moments.round(0);
    Verdict trailed = alone(field(SMEAR, none, 6));
    Verdict shaken = alone(field(SMEAR, SMEAR, 6));
    Verdict dark = alone(field(SMEAR, none, 0));
    assertEquals(Optional.of(Cause.TRAILING), trailed.cause());
    assertTrue(shaken.probabilities().get(Cause.TRIPOD) > dark.probabilities().get(Cause.TRIPOD));
    assertTrue(shaken.probabilities().get(Cause.TRIPOD) > 0.6, shaken.toString());
    assertEquals(Optional.empty(), dark.cause());
    assertTrue(trailed.saw(Evidence.Kind.GROUND_LIGHTS_SHARP));
    assertTrue(shaken.saw(Evidence.Kind.GROUND_LIGHTS_SMEARED));
  }

  private static final String LAND =
      "{\"horizonDeg\": 8, \"reliefDeg\": 2, \"treesDeg\": 1, \"brightness\": 0.22,"
          + "\"texture\": 0.6, \"lights\": ["
          + "{\"azimuthDeg\":150,\"altitudeDeg\":1,\"magnitude\":3.2},"
          + "{\"azimuthDeg\":155,\"altitudeDeg\":2,\"magnitude\":3.4},"
          + "{\"azimuthDeg\":161,\"altitudeDeg\":1.5,\"magnitude\":3.6},"
          + "{\"azimuthDeg\":166,\"altitudeDeg\":2.2,\"magnitude\":3.8},"
          + "{\"azimuthDeg\":171,\"altitudeDeg\":0.8,\"magnitude\":3.5}]}";

  /** Simulated lamps in textured land, 13 s in gusts of 2.5 px and 60 s of trailing. */
  @Test
  void simulatedLampsAreMeasuredInTexturedLand() {
    String one = "[{\"count\": 1, \"exposureSeconds\": %d, \"intervalSeconds\": 95, \"iso\": 800}]";
    String gust =
        "[{\"kind\":\"gust\",\"firstFrame\":1,\"lastFrame\":1,\"amplitudePx\":2.5,"
            + "\"acrossShare\":0.3,\"frequencyHz\":5.2,\"directionDeg\":24}]";
    SimScene shaken =
        SimScene.of("shots", String.format(one, 13), "foreground", LAND, "events", gust);
    SimScene trailed = SimScene.of("shots", String.format(one, 60), "foreground", LAND);
    for (SimScene scene : List.of(shaken, trailed)) {
      List<Star> lamps = scene.fields().get(0).groundLights();
      assertTrue(lamps.size() >= 3, "only " + lamps.size());
      for (Star lamp : lamps) {
        assertTrue(
            scene.truths().get(0).lights().stream()
                .anyMatch(t -> Math.hypot(t.xPx() - lamp.xPx(), t.yPx() - lamp.yPx()) < 0.5),
            "no lamp at " + lamp.xPx() + ", " + lamp.yPx());
      }
    }
    assertTrue(GroundSmear.of(shaken.fields().get(0), true).orElseThrow().skyLogOdds() < -1.5);
    assertTrue(GroundSmear.of(trailed.fields().get(0), false).orElseThrow().skyLogOdds() > 1.5);
  }
}
