package rondure.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import rondure.base.Moments;
import rondure.base.Orientation;
import rondure.blur.LensSurface;
import rondure.stars.SkyMask;
import rondure.stars.SkyState;
import rondure.stars.Star;
import rondure.stars.StarField;

/**
 * The softer side as displayed, by brute force: the widest stored border place, turned by the rule
 * for positions.
 */
class LensSidesTest {
  private static final int WIDTH = LensFixture.WIDTH;
  private static final int HEIGHT = LensFixture.HEIGHT;

  /** A disc that grows so and is 0 in the mean: with curvature that far side gains the most. */
  private static LensModel tilted(int eighth, double curvaturePx) {
    double angle = eighth * Math.PI / 4;
    return LensFixture.model(
        new LensSurface(5 * Math.cos(angle), 5 * Math.sin(angle), curvaturePx, 0, 0));
  }

  /** Stored places of the borders' middles and the corners, frame pixels from the centre. */
  private static List<double[]> borders() {
    List<double[]> places = new ArrayList<>();
    for (int x = -1; x <= 1; x++) {
      for (int y = -1; y <= 1; y++) {
        if (x != 0 || y != 0) {
          places.add(new double[] {x * WIDTH / 2.0, y * HEIGHT / 2.0});
        }
      }
    }
    return places;
  }

  /** Eighth of a displayed place from the centre of the frame as displayed. */
  private static int eighth(double x, double y, Orientation orientation) {
    double storedX = (WIDTH - 1) / 2.0 + x;
    double storedY = (HEIGHT - 1) / 2.0 + y;
    double shownX = orientation.displayX(storedX, storedY, WIDTH, HEIGHT);
    double shownY = orientation.displayY(storedX, storedY, WIDTH, HEIGHT);
    double right = shownX - (orientation.displayWidthPx(WIDTH, HEIGHT) - 1) / 2.0;
    double down = shownY - (orientation.displayHeightPx(WIDTH, HEIGHT) - 1) / 2.0;
    int sideways = (int) Math.signum(Math.rint(right));
    int upright = (int) Math.signum(Math.rint(down));
    return Math.floorMod(Math.round(Math.atan2(upright, sideways) / (Math.PI / 4)), 8);
  }

  @Property
  void theSofterSideIsWhereTheWidestStarIsShown(
      @ForAll Orientation orientation, @ForAll @IntRange(min = 0, max = 7) int eighth) {
    LensModel lens = tilted(eighth, 3);
    double half = Math.hypot(WIDTH, HEIGHT) / 2;
    double widest = 0;
    int there = -1;
    for (double[] place : borders()) {
      // Along the tilt only: a corner beside it gains by its distance, not by the tilt.
      boolean along = eighth % 2 == 0 == (place[0] == 0 || place[1] == 0);
      double width = lens.widthAt(place[0] / half, place[1] / half, 1);
      if (along && width > widest) {
        widest = width;
        there = eighth(place[0], place[1], orientation);
      }
    }
    LensSides sides = LensSides.of(lens, orientation);
    // The middles of a 3 : 2 frame's long borders lie near the mean of r², where curvature is 0.
    boolean flat = eighth % 4 == 2;
    assertTrue(sides.differ() || flat, sides.toString());
    assertEquals(there, sides.softer());
    assertEquals(widest, sides.softerPx(), 1e-9);
  }

  /** D = tilt · x, from one border to the other: 2 · 5 px · 0.832 half diagonals. */
  @Property
  void withoutCurvatureBothSidesAreAlike(@ForAll Orientation orientation) {
    LensSides sides = LensSides.of(tilted(0, 0), orientation);
    assertEquals(10 * 3 / Math.sqrt(13), sides.discPx(), 1e-9);
    assertEquals(sides.softerPx(), sides.sharperPx(), 0.02);
  }

  private static Star star(double x, double y, double sigma) {
    double fwhm = sigma * Moments.FWHM_PER_SIGMA;
    Moments round = Moments.round(sigma * sigma);
    return new Star(x, y, 1000, 50, round, 0.1, 0.1, 0.1, fwhm, fwhm, 0, 0, 1, 0.5);
  }

  /** Stars that grow along the frame: the wide ones are shown where they are said to be. */
  @Property
  void measuredSidesTurnWithTheFrame(
      @ForAll Orientation orientation, @ForAll @IntRange(min = 0, max = 3) int quarter) {
    List<Star> stars = new ArrayList<>();
    int wayX = quarter % 2 == 0 ? 1 - quarter : 0;
    int wayY = quarter % 2 == 1 ? 2 - quarter : 0;
    for (int i = 0; i < 400; i++) {
      double x = WIDTH * ((i * 0.618034) % 1);
      double y = HEIGHT * ((i + 0.5) / 400);
      double along = wayX * (x / WIDTH - 0.5) + wayY * (y / HEIGHT - 0.5);
      stars.add(star(x, y, 1 + 0.8 * along));
    }
    StarField field =
        new StarField(
            WIDTH,
            HEIGHT,
            stars,
            List.of(),
            java.util.Map.of(),
            new SkyState(100, 5, 0.01, 0.5, 0),
            new SkyMask(64, List.of("1")),
            List.of(),
            List.of());
    int truth = eighth(wayX * WIDTH / 2.0, wayY * HEIGHT / 2.0, orientation);
    for (int asked : List.of(truth, LensSides.opposite(truth))) {
      SideWidths widths = SideWidths.of(field, orientation, asked).orElseThrow();
      assertTrue(widths.differ(), widths.toString());
      assertEquals(truth, widths.softer());
    }
  }
}
