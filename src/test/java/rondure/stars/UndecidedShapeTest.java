package rondure.stars;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rondure.base.Moments;
import rondure.base.PixelPlane;

/** A shape that the pixels do not tell is no shape, and no star carries a number that is none. */
class UndecidedShapeTest {

  /** A band of light across the whole frame, 1.2 px wide (σ), with noise. */
  private static PixelPlane band(double angleRad) {
    StarCanvas canvas = new StarCanvas(61, 61);
    return canvas
        .gaussianStar(30, 30, 60_000, 1.2, StarCanvas.line(120, angleRad))
        .exposed(StarCanvas.Exposure.noisy(4, 11));
  }

  private static FitPixels window(PixelPlane plane) {
    FitPixels pixels = new FitPixels();
    Background sky = StarCanvas.flat(StarCanvas.Exposure.noisy(4, 11));
    assertTrue(pixels.cut(plane, sky, new Placed(30, 30, 1, Moments.round(3)), List.of()));
    return pixels;
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.4, 0.7, 1.0, 2.0})
  void aTrailWhoseEndsLieOutsideTheWindowLeavesItsLengthOpenAndIsNotSettled(double angleRad) {
    FitPixels pixels = window(band(angleRad));
    Moments longTrail = Moments.round(1.5).plus(Moments.line(44, angleRad));
    ShapeFit fit =
        new ShapeFitter()
            .fit(
                pixels,
                new PixelNoise(4, 0),
                ShapeFamilies.profile(ShapeFamilies.TRAIL),
                new Placed(30, 30, 60_000, longTrail),
                40);
    assertFalse(fit.settled(), () -> "errors " + fit.errors());
  }

  @Test
  void aStarRefusesAnErrorThatIsNoNumberAndNamesIt() {
    IllegalArgumentException refused =
        assertThrows(IllegalArgumentException.class, () -> star(Double.NaN, 1));
    assertEquals("xxErrorPx2 must be finite and >= 0, was NaN", refused.getMessage());
    refused =
        assertThrows(IllegalArgumentException.class, () -> star(0.1, Double.POSITIVE_INFINITY));
    assertEquals("wingRatio must be finite, was Infinity", refused.getMessage());
  }

  private static Star star(double xxErrorPx2, double wingRatio) {
    Moments moments = Moments.round(1);
    return new Star(
        10, 10, 1000, 50, moments, xxErrorPx2, 0.1, 0.1, 2.4, 2.4, 0, 0, wingRatio, 0.5);
  }
}
