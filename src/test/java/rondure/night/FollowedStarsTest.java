package rondure.night;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rondure.base.Moments;
import rondure.sky.Camera;
import rondure.sky.FrameSky;
import rondure.sky.Rotation;
import rondure.sky.SceneSky;
import rondure.sky.Spin;
import rondure.sky.StarTracks;
import rondure.stars.Star;
import rondure.stars.StarField;
import rondure.testing.Fields;

/**
 * Points that other frames show again where the sky took them are stars; those that stay are not.
 */
class FollowedStarsTest {
  private static final int STARS = 12;
  private static final int FRAMES = 3;

  private static List<StarField> fields(double pxPerFrame) {
    List<StarField> fields = new ArrayList<>();
    for (int frame = 0; frame < FRAMES; frame++) {
      double moved = frame * pxPerFrame;
      List<Star> stars =
          IntStream.range(0, STARS)
              .mapToObj(i -> Fields.star(50 + 60 * i + moved, 400, Moments.round(1 + i), 0.05))
              .toList();
      fields.add(Fields.field(900, 600, stars, List.of()));
    }
    return fields;
  }

  /**
   * @param tracked stars with a track
   */
  private static SceneSky sky(SceneSky.Finding finding, int tracked) {
    int[] tracks = IntStream.range(0, STARS).map(i -> i < tracked ? i : -1).toArray();
    FrameSky registered =
        new FrameSky(Optional.of(Rotation.NONE), Optional.of(Spin.NONE), Spin.NONE, 0, 0);
    return new SceneSky(
        finding,
        Optional.of(Camera.rectilinear(1000, 900, 600)),
        false,
        Optional.empty(),
        1,
        Collections.nCopies(FRAMES, registered),
        new StarTracks(STARS, Collections.nCopies(FRAMES, tracks)));
  }

  private static boolean proven(SceneSky.Finding finding, int tracked, double pxPerFrame) {
    return new FollowedStars(sky(finding, tracked), fields(pxPerFrame)).prove(1);
  }

  @Test
  void pointsThatTurnWithTheSkyAreStars() {
    assertTrue(proven(SceneSky.Finding.SKY_TURNS, STARS, 5));
    assertTrue(proven(SceneSky.Finding.SKY_TURNS, 9, 5));
  }

  @Test
  void pointsThatStayOrThatNoOtherFrameShowsProveNothing() {
    assertFalse(proven(SceneSky.Finding.SKY_TURNS, STARS, 0.4));
    assertFalse(proven(SceneSky.Finding.SKY_TURNS, 7, 5));
    assertFalse(proven(SceneSky.Finding.TRACKING, STARS, 5));
    assertFalse(proven(SceneSky.Finding.NO_MATCH, STARS, 5));
  }
}
