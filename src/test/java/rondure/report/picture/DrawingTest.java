package rondure.report.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import rondure.base.Moments;
import rondure.base.Orientation;
import rondure.base.Stamp;
import rondure.blur.FrameBlur;
import rondure.blur.LensSurface;
import rondure.blur.StarBlur;
import rondure.blur.Terms;
import rondure.sky.Camera;
import rondure.sky.Direction;
import rondure.sky.Projection;
import rondure.sky.Spin;
import rondure.stars.SkyMask;
import rondure.stars.SkyState;
import rondure.stars.Star;
import rondure.stars.StarField;

class DrawingTest {
  private static final int WIDTH = 640;
  private static final int HEIGHT = 384;

  private static Star star(Moments moments) {
    return new Star(100, 100, 1000, 50, moments, 0.1, 0.1, 0.1, 3, 2, 0, 0, 1, 0.5);
  }

  private static DirectionFan fan(Star star, Orientation orientation) {
    return new DirectionFan(List.of(star), orientation, Optional.empty(), (key, values) -> key);
  }

  @Test
  void theWheelPutsOneDirectionIntoOneSector() {
    Star stretched = star(Moments.ofAxes(4, 1, Math.toRadians(30)));
    double[] shares = fan(stretched, Orientation.NORMAL).shares();
    assertEquals(1, shares[2], 1e-12);
    double[] turned = fan(stretched, Orientation.ROTATED_90_CW).shares();
    assertEquals(1, turned[8], 1e-12, "30° and a quarter turn clockwise are 120°");
  }

  /**
   * The middle of a camera that looks at the horizon due south sees the sky move level; a quarter
   * turn of the picture makes that upright.
   */
  @Test
  void theSkysMarkLiesAlongTheMotionOfTheStars() {
    SkyDirections level =
        SkyDirections.of(looksSouth(), List.of(star(Moments.round(2))), Orientation.NORMAL)
            .orElseThrow();
    assertEquals(0, Math.sin(level.middleRad()), 1e-9);
    assertTrue(level.isOneWay());
    SkyDirections turned =
        SkyDirections.of(looksSouth(), List.of(star(Moments.round(2))), Orientation.ROTATED_90_CW)
            .orElseThrow();
    assertEquals(Math.PI / 2, turned.middleRad(), 1e-9);
    List<String> said = new ArrayList<>();
    Drawn plain = Drawn.of(withSky(Optional.empty(), said), 116, 116);
    assertEquals(List.of(), said, "no pole, no mark");
    Drawn marked = Drawn.of(withSky(Optional.of(level), said), 116, 116);
    assertEquals(List.of("picture.fan.sky"), said, "labelled");
    assertTrue(marked.isDark(102, 58) && marked.isDark(14, 58), "at both ends of the level");
    assertFalse(marked.isDark(58, 10) || plain.isDark(102, 58), "and nowhere else");
  }

  private static DirectionFan withSky(Optional<SkyDirections> sky, List<String> said) {
    PictureWords words =
        (key, values) -> {
          said.add(key);
          return key;
        };
    return new DirectionFan(List.of(star(Moments.round(2))), Orientation.NORMAL, sky, words);
  }

  /** The pole straight up in the picture: a camera that looks along the equator. */
  private static FrameBlur looksSouth() {
    Camera camera = new Camera(Projection.RECTILINEAR, 1000, 0, 100, 100);
    Spin sky = Spin.ofSky(Direction.of(0, -1, 0));
    return new FrameBlur(
        new FrameBlur.Optics(camera, 200, 200, LensSurface.FLAT, new FrameBlur.Focus(0, 1)),
        new FrameBlur.Motion(sky, sky, 10, Moments.round(0)),
        new StarBlur.Core(0.9, 1),
        StarBlur.Glow.NONE);
  }

  @Test
  void roundStarsDoNotTurnTheWheel() {
    double[] shares = fan(star(Moments.round(2)), Orientation.NORMAL).shares();
    for (double share : shares) {
      assertEquals(0, share, 1e-12);
    }
  }

  /** All parts worth a word have name and share, however narrow, and no words overlap. */
  @Property(tries = 200)
  void everyPartOfABudgetIsLabelled(
      @ForAll @DoubleRange(min = 0.3, max = 3) double core,
      @ForAll @DoubleRange(min = 0, max = 4) double focus,
      @ForAll @DoubleRange(min = 0, max = 2) double trail,
      @ForAll @DoubleRange(min = 0, max = 0.2) double lens) {
    Terms terms = new Terms(core, focus, trail, 0.05, lens, 0.04, 0.02);
    List<BudgetPart> parts = BudgetPart.of(terms);
    assertEquals(1, parts.stream().mapToDouble(BudgetPart::share).sum(), 1e-9);
    PictureWords words = (key, values) -> values.isEmpty() ? key : values.get("name") + " 10 %";
    Font font = ReportFonts.sans(9.6f);
    List<BudgetLabels.Label> labels = BudgetLabels.placed(parts, 90, font, words);
    assertEquals(parts.size(), labels.size());
    FontRenderContext context = new FontRenderContext(null, true, true);
    for (BudgetLabels.Label one : labels) {
      double end = one.x() + font.getStringBounds(one.words(), context).getWidth();
      for (BudgetLabels.Label other : labels) {
        boolean crosses = other.leaderX() > one.x() && other.leaderX() < end;
        assertFalse(other.line() > one.line() && crosses, "a leader crosses " + one + other);
        boolean meets = other.line() == one.line() && other.x() > one.x() && other.x() < end;
        assertFalse(meets, one + " meets " + other);
      }
    }
  }

  /** A bar is as long as its star is wide, up to the whole of the scene's scale. */
  @Test
  void barsOfOneSceneCompare() {
    List<BudgetPart> parts = BudgetPart.of(new Terms(1, 0, 0, 1, 0, 0, 0));
    double[] ends = new double[3];
    double[] wide = {2, 4, 40};
    for (int i = 0; i < wide.length; i++) {
      BudgetBar bar = new BudgetBar(parts, wide[i], " ", 8, (key, values) -> " ");
      ends[i] = Drawn.of(bar, 330, bar.heightFor(330)).lastInked(10);
    }
    assertEquals(2, ends[1] / ends[0], 0.03);
    assertEquals(330 - 84, ends[2], 1.5);
  }

  /** Marching squares keep a level's area: of a cone of height 1, radius 20, half is 10 wide. */
  @Test
  void aContourEnclosesTheAreaAboveItsLevel() {
    int side = 51;
    double[] cone = new double[side * side];
    for (int i = 0; i < cone.length; i++) {
      cone[i] = 1 - Math.hypot(i % side - 25, i / side - 25) / 20;
    }
    Path2D half = Contour.of(cone, side, 0.5);
    int inside = 0;
    for (int i = 0; i < 500 * 500; i++) {
      inside += half.contains(i % 500 / 10.0, i / 500 / 10.0) ? 1 : 0;
    }
    assertEquals(Math.PI * 100, inside / 100.0, 2);
  }

  /** FWHM of a Gaussian is 2 √(2 ln 2) σ, so the outline of σ = 2 px is 4.709 px wide. */
  @Test
  void theOutlineOfAGaussianStandsAtItsHalfMaximum() {
    int samples = 4;
    int side = 81;
    float[] values = new float[side * side];
    for (int i = 0; i < values.length; i++) {
      double x = (i % side - side / 2) / (double) samples;
      double y = (i / side - side / 2) / (double) samples;
      values[i] = (float) Math.exp(-(x * x / (2 * 4) + y * y / 2));
    }
    Stamp stamp = new Stamp(side, values);
    Rectangle2D upright = HalfMaximumOutline.of(stamp, samples, Orientation.NORMAL).getBounds2D();
    assertEquals(2 * Moments.FWHM_PER_SIGMA, upright.getWidth(), 0.02);
    assertEquals(Moments.FWHM_PER_SIGMA, upright.getHeight(), 0.02);
    Rectangle2D turned =
        HalfMaximumOutline.of(stamp, samples, Orientation.ROTATED_90_CW).getBounds2D();
    assertEquals(2 * Moments.FWHM_PER_SIGMA, turned.getHeight(), 0.02);
  }

  /** Contrast ratio by WCAG 2.1, relative luminance; 1.4.11 asks 3 : 1 for signs. */
  @Test
  void everySignStandsOutFromPaper() {
    for (Mark mark : Mark.values()) {
      double contrast = 1.05 / (luminance(mark.colour()) + 0.05);
      assertTrue(contrast >= 3, mark + " has contrast " + contrast);
    }
    assertTrue(1.05 / (luminance(Palette.MUTED) + 0.05) >= 4.5, "small text, 1.4.3");
  }

  private static double luminance(Color colour) {
    double[] linear = new double[3];
    float[] parts = colour.getRGBColorComponents(null);
    for (int i = 0; i < 3; i++) {
      linear[i] =
          parts[i] <= 0.04045 ? parts[i] / 12.92 : Math.pow((parts[i] + 0.055) / 1.055, 2.4);
    }
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2];
  }

  private static StarField field(SkyMask mask) {
    return new StarField(
        WIDTH,
        HEIGHT,
        List.of(),
        List.of(),
        Map.of(),
        new SkyState(100, 5, 0.01, 0.5, 0),
        mask,
        List.of(),
        List.of());
  }

  @Property
  void theGroundTurnsWithTheFrame(@ForAll Orientation orientation) {
    List<String> rows =
        List.of("1111111111", "1111111111", "1111111111", "0000011111", "0000000000", "0000000000");
    SkyMask mask = new SkyMask(64, rows);
    DisplayFrame frame = DisplayFrame.fit(field(mask), orientation, 300, 300);
    Path2D ground = frame.ground(mask);
    for (int row = 0; row < rows.size(); row++) {
      for (int column = 0; column < rows.get(row).length(); column++) {
        double x = column * 64 + 31.5;
        double y = row * 64 + 31.5;
        boolean drawn = ground.contains(frame.x(x, y), frame.y(x, y));
        assertEquals(!mask.isSky(x, y), drawn, column + ", " + row);
      }
    }
    Rectangle2D bounds = ground.getBounds2D();
    assertTrue(bounds.getMinX() >= -1e-9 && bounds.getMaxX() <= frame.width() + 1e-9);
    assertTrue(bounds.getMinY() >= -1e-9 && bounds.getMaxY() <= frame.height() + 1e-9);
  }

  @Property
  void turningBackFindsTheStoredPixel(
      @ForAll Orientation orientation,
      @ForAll @IntRange(min = 0, max = 8) int x,
      @ForAll @IntRange(min = 0, max = 8) int y) {
    double shownX = orientation.displayX(x, y, 9, 9);
    double shownY = orientation.displayY(x, y, 9, 9);
    assertEquals(x, DisplayTurn.storedX(orientation, shownX, shownY, 9), 0);
    assertEquals(y, DisplayTurn.storedY(orientation, shownX, shownY, 9), 0);
  }
}
