package rondure.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import rondure.base.FrameProblem;
import rondure.base.Moments;
import rondure.base.RobustStats;
import rondure.stars.Star;
import rondure.stars.StarField;

/** Shapes in real photographs, when a folder of them is given. */
class RealShapesTest {

  private static StarField measure(String name) throws IOException, FrameProblem {
    String given = System.getProperty("rondure.realFrames", "");
    assumeTrue(!given.isBlank(), "give -Drondure.realFrames=DIR to measure real photographs");
    Path picture = Path.of(given).resolve(name);
    assumeTrue(Files.exists(picture), "no " + name + " in the folder of real photographs");
    return ShapeExport.measure(picture);
  }

  @Test
  void aLandscapeWithTrailedStarsIsMeasuredWithOneDirection() throws IOException, FrameProblem {
    StarField field = measure("wide/stars-over-rocks.jpg");
    assertTrue(field.stars().size() >= 300, () -> "only " + field.stars().size());
    Moments sum = Moments.round(0);
    double lengths = 0;
    for (Star star : field.stars()) {
      Moments unit = star.moments().times(1 / star.moments().meanPx2());
      sum = sum.plus(unit);
      lengths += unit.spin2Px2();
    }
    assertTrue(sum.spin2Px2() / lengths > 0.7, "coherence " + sum.spin2Px2() / lengths);
    // reference: sep 1.x on the same picture, median of 1385 to 3768 sources: 24° to 30°
    assertEquals(27, Math.toDegrees(sum.positionAngleRad()), 5);
    double[] ratios =
        field.stars().stream()
            .mapToDouble(star -> Math.sqrt(star.moments().majorPx2() / star.moments().minorPx2()))
            .toArray();
    assertTrue(RobustStats.median(ratios) > 1.4, "elongation " + RobustStats.median(ratios));
  }
}
