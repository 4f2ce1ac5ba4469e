package rondure.night;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import rondure.base.Moments;
import rondure.base.Orientation;
import rondure.stars.StarField;
import rondure.testing.Fields;

/** The largest use of a frame whose stars have known widths. */
class UsefulnessTest {
  private static final int WIDTH = 6000;
  private static final int HEIGHT = 4000;

  /** Stars on a grid; their FWHM by the place across the frame, 0 to 1. */
  private static StarField field(ToDoubleFunction<Double> fwhmPx) {
    List<rondure.stars.Star> stars = new ArrayList<>();
    for (int i = 0; i < 24; i++) {
      for (int j = 0; j < 16; j++) {
        double x = (i + 0.5) / 24;
        double sigma = fwhmPx.applyAsDouble(x) / Moments.FWHM_PER_SIGMA;
        stars.add(
            Fields.star(x * WIDTH, (j + 0.5) / 16 * HEIGHT, Moments.round(sigma * sigma), 0.01));
      }
    }
    return Fields.field(WIDTH, HEIGHT, stars, List.of());
  }

  private static Usefulness of(ToDoubleFunction<Double> fwhmPx) {
    return Usefulness.of(field(fwhmPx), Orientation.NORMAL, UseSettings.defaults());
  }

  @Test
  void sharpStarsServeEveryUse() {
    assertEquals(OutputUse.FULL_SIZE, of(x -> 2.2).largestUse());
    assertEquals(WIDTH, of(x -> 2.2).pointUpToWidthPx());
  }

  /** 2.5 px at output size (common practice): 3.8 px fit a picture of 0.65 of 6000 px and more. */
  @Test
  void widerStarsServeSmallerPictures() {
    Usefulness screen = of(x -> 3.7);
    assertEquals(OutputUse.SCREEN_4K, screen.largestUse());
    assertTrue(screen.pointUpToWidthPx() > 3840 && screen.pointUpToWidthPx() < 2.5 / 3.7 * WIDTH);
    assertEquals(OutputUse.WEB, of(x -> 6).largestUse());
    assertEquals(OutputUse.NONE, of(x -> 10).largestUse());
  }

  @Test
  void aFifthOfTheSkyMayBeSoft() {
    assertEquals(OutputUse.FULL_SIZE, of(x -> x < 0.15 ? 10 : 2.2).largestUse());
    assertEquals(OutputUse.NONE, of(x -> x < 0.3 ? 10 : 2.2).largestUse());
  }

  @Test
  void aSmallPictureServesAPageAtHalfItsSize() {
    UseSettings wide = new UseSettings(2.5, 1.3, 0.8, 9000, 8000);
    StarField field = field(x -> 4);
    assertEquals(OutputUse.WEB, Usefulness.of(field, Orientation.NORMAL, wide).largestUse());
  }

  @Test
  void aPortraitIsAsWideAsItIsShown() {
    Usefulness turned =
        Usefulness.of(field(x -> 2.2), Orientation.ROTATED_90_CW, UseSettings.defaults());
    assertEquals(HEIGHT, turned.pointUpToWidthPx());
  }

  /** 2048 px of the longer side; 4000 / 6000 of that in portrait; half of a picture of 3000 px. */
  @Test
  void theLeastWidthIsThatOfTheWebAsThePictureIsShown() {
    StarField field = field(x -> 10);
    UseSettings web = UseSettings.defaults();
    assertEquals(2048, Usefulness.of(field, Orientation.NORMAL, web).leastWidthPx());
    Usefulness turned = Usefulness.of(field, Orientation.ROTATED_90_CW, web);
    assertEquals(2048.0 * HEIGHT / WIDTH, turned.leastWidthPx(), 1e-9);
    assertTrue(turned.pointUpToWidthPx() < turned.leastWidthPx());
    UseSettings wide = new UseSettings(2.5, 1.3, 0.8, 9000, 8000);
    assertEquals(WIDTH / 2.0, Usefulness.of(field, Orientation.NORMAL, wide).leastWidthPx());
  }
}
